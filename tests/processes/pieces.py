"""What tests have other processes do: functions of a module, which a new interpreter can find."""

import os
import signal
import time

from itembank.errors import CheckFailed, ItembankError


def told(number):
    """Tell what came in, and which process did it."""
    return number, os.getpid()


def double(number):
    return 2 * number


def dies_at_seven(number):
    if number == 7:
        os.kill(os.getpid(), signal.SIGKILL)
    return number


def dies_twice(number):
    if number in (7, 33):
        os.kill(os.getpid(), signal.SIGKILL)
    return number


def dies_once(case):
    """Die at the first try, as a process does that somebody else ended."""
    number, mark = case
    if number == 7:
        try:
            os.close(os.open(mark, os.O_CREAT | os.O_EXCL))
        except FileExistsError:
            return number
        os.kill(os.getpid(), signal.SIGKILL)
    return number


def endless_at_nine(number):
    while number == 9:
        time.sleep(0.05)
    return number


def faulty(number):
    """Raise at 3 and at 5; the fault at 3 takes longer to come."""
    if number == 3:
        time.sleep(0.3)
        raise ItembankError("there is no seat 3")
    if number == 5:
        raise CheckFailed("it comes to 5")
    return number


def broken(number):
    raise KeyError(number)


def slow(seconds):
    time.sleep(seconds)
    return os.getpid()


def cannot_be_sent(number):
    return lambda: number


def noisy(number):
    """Print: nothing of it may be taken for an answer."""
    print("much" * 1000)
    return number
