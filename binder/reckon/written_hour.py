"""Hours as people write them: '21:15', '9 p.m.', 'noon'; alone, or beside a day."""

from __future__ import annotations

import re
from datetime import time
from typing import NamedTuple

_COLON = r"(?P<hour>\d{1,2}):(?P<minute>\d{2})(?::\d{2})?(?: ?(?P<half>am|pm))?"
_POINT = r"(?P<hour>\d{1,2})\.(?P<minute>\d{2}) ?(?P<half>am|pm)"
_HALF = r"(?P<hour>\d{1,2}) ?(?P<half>am|pm)"
_H = r"(?P<hour>\d{1,2})h(?P<minute>\d{2})"
_WORD = r"(?P<word>(?:12 )?(?:noon|midday))"
_SHAPES = (_COLON, _POINT, _HALF, _H, _WORD)
_BESIDE = tuple(
    re.compile(shape)
    for each in _SHAPES
    for shape in (
        rf"(?:(?P<day>.+?)(?: at | @ ?| |(?<=\d)t))??{each}",  # '3 nov 21:15', '21:15'
        rf"{each} (?:on )?(?P<day>\D.*|\d.*)",  # '21:15 on 3 nov'
    )
)


class Parted(NamedTuple):
    """What was written of the day, '' for nothing, and the hour, None for none."""

    day: str
    hour: time | None


def part(said: str) -> Parted:
    """A text in small letters, parted into its day and its hour.

    Raises ValueError for an hour that no clock shows, and for one of which half of the day is
    anybody's guess.
    """
    said = re.sub(r"^at ", "", said)
    said = re.sub(r"\b([ap])\. ?m\b\.?", r"\1m", said)
    for shape in _BESIDE:
        match = shape.fullmatch(said)
        if match:
            return Parted((match["day"] or "").strip(), _hour(match.groupdict()))
    return Parted(said, None)


def _hour(found: dict[str, str | None]) -> time:
    if found.get("word"):
        return time(12)
    hour, minute, half = int(found["hour"] or 0), found.get("minute"), found.get("half")
    if half is None:
        return time(hour, int(minute or 0))
    if not 1 <= hour <= 12 or (hour == 12 and minute is None):
        raise ValueError(found)  # 12 am: noon for some, midnight for others
    return time(hour % 12 + (12 if half == "pm" else 0), int(minute or 0))
