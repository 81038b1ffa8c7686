"""Commands in a copy of this process, which has loaded what they need: to kill, stop and watch."""

import os
import signal
import sys
import traceback


def fork(work, *, out=None, err=None):
    """Do some work in a child and return its id; `out` and `err` are where it writes, if at all.

    It begins like a process of its own: what stops the tests (or is kept from them) stops it.
    """
    child = os.fork()
    if child:
        return child
    code = 70
    try:  # whatever happens here, it must not go on as a second test run
        nowhere = os.open(os.devnull, os.O_WRONLY)
        for number, place in ((1, out), (2, err)):
            os.dup2(nowhere if place is None else place, number)
        for name, number in (("stdout", 1), ("stderr", 2)):
            stream = open(number, "w", encoding="utf-8", closefd=False)  # noqa: SIM115
            setattr(sys, name, stream)
            setattr(sys, f"__{name}__", stream)
        signal.signal(signal.SIGINT, signal.default_int_handler)
        work()
        code = 0
    except SystemExit as end:
        code = end.code or 0
    except BaseException:
        traceback.print_exc()
    finally:
        for stream in (sys.stdout, sys.stderr):
            stream.flush()
        os._exit(code)


def ended(child):
    """Wait for a child and return its status, or which signal ended it, as a negative number."""
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
