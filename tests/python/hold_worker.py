"""dask-worker --preload: lets a test say when a worker is lost. In the folder GRAINSIDE_HOLD, once there is a file `armed`:

The worker called `victim` stops for ever where its first part is written and not yet renamed, and says so with a file `held`
that has its process number and the half-done file. The others stop there until that is so: the victim gets a part in any case.
"""

import os
import threading
import time

FOLDER = os.environ["GRAINSIDE_HOLD"]


def there(name):
    return os.path.exists(os.path.join(FOLDER, name))


class HeldOs:
    """The module os, as grainside.parts sees it."""

    def __init__(self, victim):
        self.victim = victim

    def __getattr__(self, name):
        return getattr(os, name)

    def replace(self, source, target):
        if there("armed") and self.victim:
            with open(os.path.join(FOLDER, "held.new"), "w", encoding="ascii") as file:
                file.write(f"{os.getpid()} {source}\n")
            os.replace(os.path.join(FOLDER, "held.new"), os.path.join(FOLDER, "held"))
            threading.Event().wait()
        while there("armed") and not there("held"):
            time.sleep(0.02)
        os.replace(source, target)


def dask_setup(worker):
    from grainside import parts

    parts.os = HeldOs(worker.name == "victim")
