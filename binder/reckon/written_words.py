"""The words of a day as it was typed, made plain: small letters, and slips of the pen mended."""

from __future__ import annotations

import re

from binder.reckon.calendar import DAYS, MONTHS

NEAR = {"today": 0, "yesterday": -1, "tomorrow": 1}
"""Days that have a name of their own, and how far on they lie."""

_TIMES = (
    "in the night|early morning|morning|midday|afternoon|early evening|after supper|late evening"
)
_OF_DAY = re.compile(rf",? (?:no hour(?: noted)?|(?<=\d{{4}}, )(?:{_TIMES}))$")


def plain(text: str) -> str:
    """Small letters, single spaces, and no mark that says nothing."""
    said = " ".join(text.casefold().replace("’", "'").split())
    said = _OF_DAY.sub("", said)
    said = re.sub(r"(?<=[a-z])\.(?![a-z])|(?<=[a-z0-9]),(?= |$)", "", said)  # 'nov.', 'tue, 3'
    said = re.sub(r"(?<=[a-z] \d),(?=\d{4}$)|(?<=[a-z] \d\d),(?=\d{4}$)", " ", said)
    return re.sub(r"[a-z]{4,}", lambda word: _mended(word[0]), said).strip()


_LONG = tuple(name.casefold() for name in (*DAYS, *MONTHS) if len(name) > 4)
_KNOWN = {
    *("last", "next", "this", "week", "weeks", "month", "months", "year", "years", "days", "from"),
    *("three", "four", "five", "seven", "eight", "nine", "eleven", "twelve", "noon", "midday"),
    *("before", "after", "coming", "time", "fortnight", "sept", "tues", "thur", "thurs", "june"),
    *("july", "morning", "afternoon", "evening"),
}


def _mended(word: str) -> str:
    """A word with a slip of the pen in it, where it is near one name only."""
    if word in _KNOWN or word in NEAR or word in _LONG:
        return word
    from difflib import get_close_matches  # only a slip needs it, so the start does not wait

    near = get_close_matches(word, (*_LONG, *NEAR), n=2, cutoff=0.8)
    if len(near) != 1 or abs(len(near[0]) - len(word)) > 1 or word == f"{near[0]}s":
        return word  # 'mondays' are many
    return near[0]
