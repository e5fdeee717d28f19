"""Numbers that name a book or an article: told right from wrong by themselves, never looked up.

ISBN: ISBN Users' Manual, International Edition, 7th edition (2017), on the check digit; the older
ten digits after ISO 2108:1992. DOI: the pattern that Crossref publishes for its DOIs.
"""

from __future__ import annotations

import re

from binder.errors import CanMend

_DOI = re.compile(r"10\.\d{4,9}/\S+")
_BEFORE_DOI = re.compile(r"^(?:https?://(?:dx\.)?doi\.org/|doi:\s*)", re.IGNORECASE)


def is_isbn(text: str) -> bool:
    """True for ten or thirteen digits, hyphens and spaces aside, whose last one fits the others."""
    digits = re.sub(r"[\s-]", "", text).upper()
    if re.fullmatch(r"\d{9}[\dX]", digits, re.ASCII):
        values = [10 if digit == "X" else int(digit) for digit in digits]
        return (
            sum(value * weight for value, weight in zip(values, range(10, 0, -1), strict=True)) % 11
            == 0
        )
    if re.fullmatch(r"97[89]\d{10}", digits, re.ASCII):
        return sum(int(digit) * (1, 3)[at % 2] for at, digit in enumerate(digits)) % 10 == 0
    return False


def isbn(text: str) -> str:
    """The ISBN as it was written, without blanks around it; CanMend where it is mistyped."""
    said = re.sub(r"^ISBN(?:-1[03])?:?\s*", "", text.strip(), flags=re.IGNORECASE)
    if said and not is_isbn(said):
        raise CanMend(f"“{said}” is no ISBN; a digit is mistyped, or one is missing.")
    return said


def doi(text: str) -> str:
    """The DOI alone, without an address in front; CanMend for anything else."""
    said = _BEFORE_DOI.sub("", text.strip())
    if said and not _DOI.fullmatch(said):
        raise CanMend(f"“{said}” is no DOI; it begins with 10., as 10.1000/182.")
    return said
