"""Moments and uids, as they are written into rows."""

import time
from datetime import datetime


def new_uid() -> str:
    """A time-ordered UUID (version 7 of RFC 9562) as text."""
    from uuid6 import uuid7  # slow to import, and only needed once something is written

    return str(uuid7())


def now_ms() -> int:
    """Milliseconds since 1970, for `changed`."""
    return time.time_ns() // 1_000_000


def now() -> str:
    """Local date and time to the second, ISO 8601."""
    return datetime.now().isoformat(timespec="seconds")
