"""Moments and uids, as they are written into rows."""

import time
from datetime import datetime


def new_uid() -> str:
    """A time-ordered UUID (version 7 of RFC 9562) as text."""
    from uuid6 import uuid7  # slow to import, and only needed once something is written

    return str(uuid7())


def made_ms(uid: str) -> int:
    """When a uid of `new_uid` was made, in milliseconds since 1970 (its first 48 bits)."""
    return int(uid.replace("-", "")[:12], 16)


def now_ms() -> int:
    """Milliseconds since 1970, for `changed`."""
    return time.time_ns() // 1_000_000


def now() -> str:
    """Local date and time to the second, ISO 8601."""
    return datetime.now().isoformat(timespec="seconds")
