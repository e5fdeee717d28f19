"""The one place that asks the machine what day and time it is; uids and moments of rows too.

A clock is made where the program starts and handed down from there, so that whoever needs a day
is given it. What a row says of its last change is read here by the store itself.
"""

import time
from datetime import date, datetime


class Clock:
    """What the user's own clock and calendar say."""

    def now(self) -> datetime:
        """Date and time where the user is, without a zone."""
        return datetime.now()

    def today(self) -> date:
        """The date where the user is."""
        return self.now().date()


class OtherDay(Clock):
    """A clock put to another day; the time of day stays the machine's.

    For pictures of a shelf on the day it was last written on, and for trying a day out.
    """

    def __init__(self, day: date) -> None:
        self.day = day

    def now(self) -> datetime:
        """The machine's time of day, on the chosen day."""
        return datetime.combine(self.day, super().now().time())


def new_uid() -> str:
    """A time-ordered UUID (version 7 of RFC 9562) as text."""
    from uuid6 import uuid7  # slow to import, and only needed once something is written

    return str(uuid7())


def now_ms() -> int:
    """Milliseconds since 1970, for `changed`."""
    return time.time_ns() // 1_000_000


def now() -> str:
    """Local date and time to the second, ISO 8601."""
    return Clock().now().isoformat(timespec="seconds")
