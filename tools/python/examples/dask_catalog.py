#!/usr/bin/env python3
"""Checks a catalog of JSON Lines on the workers of a Dask cluster.

The findings are, byte for byte, those of `grainside check --format jsonl CATALOG` on one machine. Without --scheduler a
cluster of this machine's cores is started and ended again. Workers need the package grainside, and see the catalog and the
folder of parts under the same paths as this process. A worker that is lost does not matter: its parts are done by others.
"""

import argparse
import dataclasses
import os
import sys

import grainside
from grainside import parts

EPILOG = """\
Examples:
  dask_catalog.py --out findings.jsonl catalog.jsonl
  dask_catalog.py --scheduler tcp://10.0.0.5:8786 --market us,eu --out findings.jsonl /shared/catalog.jsonl

Exit status:
  0  nothing at or above the grade of --fail-at
  1  something is
  2  an error, even one unreadable record among many; what can be checked is, and
     the output is written. Where a part is missing it is not, and the others stay.
"""


def options():
    parser = argparse.ArgumentParser(
        description=__doc__, epilog=EPILOG, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("catalog", help="a file of JSON Lines")
    parser.add_argument("--out", required=True, metavar="FILE", help="where the findings go, whole or not at all")
    parser.add_argument("--scheduler", metavar="ADDRESS", help="of a cluster that runs; default: one of this machine")
    parser.add_argument("--wait-for", type=int, default=1, metavar="N", help="begin when N workers are there (default: 1)")
    parser.add_argument("--market", type=lambda text: text.split(","), default=[], metavar="M[,M...]")
    parser.add_argument("--on", metavar="YYYY-MM-DD", help="apply the rules in force on this day (default: today)")
    parser.add_argument("--rules", metavar="FOLDER", help="a rule book, the same on every machine (default: built in)")
    parser.add_argument("--fail-at", default="misleading", metavar="GRADE", help="exit with 1 from this grade on")
    parser.add_argument("--part-bytes", type=int, default=64 << 20, metavar="N", help="of a part (default: 64 MiB)")
    parser.add_argument("--parts", metavar="FOLDER", help="where workers write their parts (default: OUT.parts)")
    return parser.parse_args()


def connect(call):
    # Dask is loaded when the call is known to be right.
    from distributed import Client, LocalCluster

    if call.scheduler:
        return Client(call.scheduler)
    return Client(LocalCluster(threads_per_worker=1, dashboard_address=None))


# What workers are sent: plain values, and functions of this file, which go there whole. A worker that has no package yet can
# then say so; a value of the package that it cannot read would end it.
def trouble_with(settings):
    try:
        from grainside import CheckSettings

        CheckSettings(*settings).checker()
    except Exception as fault:
        return f"{type(fault).__name__}: {fault}"
    return None


def check_one(partition, settings, folder):
    from grainside import CheckSettings, Partition, parts

    return parts.check_part(Partition(*partition), CheckSettings(*settings), folder)


def ask_workers(client, settings):
    """Raises where a worker cannot do the work, with the trouble of each, before anything is done."""
    told = client.run(trouble_with, dataclasses.astuple(settings), on_error="ignore")
    troubles = [f"worker {address}: {trouble}" for address, trouble in sorted(told.items()) if trouble]
    if troubles:
        raise grainside.BookMismatch("\n".join(troubles))


def check_on(client, planned, settings, folder):
    """Each part as one task. `retries` is for a task that raised, as where a disk was full; the parts of a lost worker go
    to others by themselves, three times (distributed.scheduler.allowed-failures)."""
    from distributed import KilledWorker, as_completed

    # pure: a result of the same call, remembered by the scheduler, would tell of a file that has been joined and removed.
    futures = client.map(
        check_one,
        [dataclasses.astuple(partition) for partition in planned],
        settings=dataclasses.astuple(settings),
        folder=folder,
        retries=2,
        pure=False,
    )
    done = []
    for future in as_completed(futures):
        try:
            done.append(future.result())
        except KilledWorker as lost:
            raise parts.IncompleteParts(f"a part was given up, each worker that took it was lost: {lost}") from None
        if sys.stderr.isatty():
            print(f"\r{len(done)} of {len(futures)} parts", end="", file=sys.stderr)
    if sys.stderr.isatty():
        print(file=sys.stderr)
    return done


def run(call):
    checker = grainside.Checker(grainside.RuleBook(call.rules), markets=call.market, on=call.on)
    grainside.exit_status(None, False, call.fail_at)  # a wrong grade is told before the work and not behind it
    planned = grainside.partitions(call.catalog, call.part_bytes)
    folder = os.path.abspath(call.parts or call.out + ".parts")

    with connect(call) as client:
        client.wait_for_workers(call.wait_for)
        ask_workers(client, checker.settings)
        if not os.path.isdir(folder):
            os.mkdir(folder)
        done = check_on(client, planned, checker.settings, folder)

    listings = 0

    def join(out):
        nonlocal listings
        listings = parts.join_parts(planned, done, folder, out.write)

    parts.write_whole(call.out, join)
    parts.remove_parts(folder)

    done.sort(key=lambda part: part.number)
    for part in done:
        for issue in part.issues:
            print(f"grainside: {issue}", file=sys.stderr)
    worst = grainside.worst_of(part.worst for part in done)
    print(f"{listings} listings in {len(planned)} parts; the worst grade: {worst or 'nothing found'}")
    return grainside.exit_status(worst, any(part.any_errors for part in done), call.fail_at)


def main():
    call = options()
    try:
        return run(call)
    except (ValueError, OSError, ImportError, parts.IncompleteParts, grainside.BookMismatch) as fault:
        print(f"dask_catalog: {fault}", file=sys.stderr)
        return 2


# A local cluster starts processes that read this file again.
if __name__ == "__main__":
    sys.exit(main())
