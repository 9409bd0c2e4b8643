"""What the benchmark scripts share: a command run and measured, medians of interleaved rounds, a table."""

import os
import statistics
import subprocess
import sys
import time


class Run:
    """One run: seconds on the clock, seconds of processor time, peak resident memory in MB, exit status."""

    def __init__(self, seconds, processor, memory, status):
        self.seconds = seconds
        self.processor = processor
        self.memory = memory
        self.status = status


def run(command, stdin=None, stdout=subprocess.DEVNULL, good=(0, 1), utf8=True):
    """Runs `command` (a list) and waits for it; ends the script where the exit status is none of `good`."""
    environment = dict(os.environ, LC_ALL="C.UTF-8" if utf8 else "C")
    began = time.perf_counter()
    process = subprocess.Popen(command, stdin=stdin, stdout=stdout, env=environment)
    _, status, usage = os.wait4(process.pid, 0)
    seconds = time.perf_counter() - began
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode not in good:
        sys.exit(f"{command[0]}: exit status {process.returncode}")
    return Run(seconds, usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024, process.returncode)


def interleaved(rows, rounds):
    """`rows`: name -> function that gives a Run. Each round runs all, the first of them in turn. Gives name -> list."""
    results = {name: [] for name in rows}
    names = list(rows)
    for number in range(rounds):
        turn = number % len(names)
        for name in names[turn:] + names[:turn]:
            results[name].append(rows[name]())
    return results


def median(runs, what="seconds"):
    return statistics.median(getattr(one, what) for one in runs)


def spread(runs):
    """The smallest and the largest, as shares of the median."""
    middle = median(runs)
    values = [one.seconds for one in runs]
    return min(values) / middle, max(values) / middle
