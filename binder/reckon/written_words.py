"""The words of a day as it was typed, made plain: small letters, and slips of the pen mended."""

from __future__ import annotations

import re

from binder.reckon.calendar import DAYS, MONTHS

NEAR = {
    "today": 0, "yesterday": -1, "tomorrow": 1, "now": 0, "tonight": 0, "last night": -1,
    "this morning": 0, "this afternoon": 0, "this evening": 0,
    "tmrw": 1, "tmw": 1, "tomoz": 1, "yest": -1, "yday": -1,
}  # fmt: skip
"""Days that have a name of their own, and how far on they lie."""

FEASTS = {
    "christmas eve": "24 december", "xmas eve": "24 december", "christmas": "25 december",
    "christmas day": "25 december", "xmas": "25 december", "xmas day": "25 december",
    "boxing day": "26 december", "new year's eve": "31 december", "new year's day": "1 january",
    "hallowe'en": "31 october", "halloween": "31 october",
}  # fmt: skip
"""Days of a feast that is kept on one day of the year (common practice)."""
_TENS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")
_NTHS = (
    *_TENS, "tenth", "eleventh", "twelfth", "thirteenth", "fourteenth", "fifteenth", "sixteenth",
    "seventeenth", "eighteenth", "nineteenth", "twentieth", *(f"twenty-{n}" for n in _TENS),
    "thirtieth", "thirty-first",
)  # fmt: skip
_NTH = re.compile(rf"\b(?:{'|'.join(sorted(_NTHS, key=len, reverse=True))})\b")
_SHORTENED = {"b4": "before", "wk": "week", "wks": "weeks", "eom": "end of month", "yrs": "years"}
_SHORT_WORD = re.compile(rf"\b(?:{'|'.join(_SHORTENED)})\b")

_TIMES = (
    "in the night|early morning|morning|midday|afternoon|early evening|after supper|late evening"
)
_OF_DAY = re.compile(rf",? (?:no hour(?: noted)?|(?<=\d{{4}}, )(?:{_TIMES}))$")


def plain(text: str) -> str:
    """Small letters, single spaces, and no mark that says nothing."""
    said = " ".join(text.casefold().replace("’", "'").split()).rstrip("! ")
    said = _SHORT_WORD.sub(lambda word: _SHORTENED[word[0]], said)
    said = _NTH.sub(lambda word: f"{_NTHS.index(word[0]) + 1}th", said)
    said = _OF_DAY.sub("", said)
    said = re.sub(r"(?<=[a-z])\.(?![a-z])|(?<=[a-z0-9]),(?= |$)", "", said)  # 'nov.', 'tue, 3'
    said = re.sub(r"(?<=[a-z] \d),(?=\d{4}$)|(?<=[a-z] \d\d),(?=\d{4}$)", " ", said)
    said = re.sub(r"[a-z]{4,}", lambda word: _mended(word[0]), said).strip()
    return FEASTS.get(said, said)


_LONG = tuple(name.casefold() for name in (*DAYS, *MONTHS) if len(name) > 4)
_KNOWN = {
    *("last", "next", "this", "week", "weeks", "month", "months", "year", "years", "days", "from"),
    *("three", "four", "five", "seven", "eight", "nine", "eleven", "twelve", "noon", "midday"),
    *("before", "after", "coming", "time", "fortnight", "sept", "tues", "thur", "thurs", "june"),
    *("july", "morning", "afternoon", "evening", "tonight", "night", "past", "today", "ago"),
}


def _mended(word: str) -> str:
    """A word with a slip of the pen in it, where it is near one name only."""
    if word in _KNOWN or word in NEAR or word in _LONG:
        return word
    from difflib import get_close_matches  # only a slip needs it, so the start does not wait

    near = get_close_matches(word, (*_LONG, *NEAR), n=2, cutoff=0.8)
    if (
        len(near) != 1
        or near[0][0] != word[0]
        or abs(len(near[0]) - len(word)) > 1
        or word == f"{near[0]}s"
    ):
        return word  # 'mondays' are many
    return near[0]
