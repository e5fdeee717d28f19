"""Which readings carry a caution, and what it says: short, plain, once.

Common practice among readers, and what codes of conduct of their associations have in common: no
diagnosis, no legal or financial advice, no reading in place of help in danger, and consent and
discretion where somebody else is read for. Licensed practice and local law come first.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

_WORD = re.compile(r"[^\W\d_]+(?:-[^\W\d_]+)*")
_SELF = frozenset({"", "self", "me", "myself", "i"})


@dataclass(frozen=True, slots=True)
class Area:
    """A field in which cards are no counsel; `words` in a topic or question point to it."""

    name: str
    words: frozenset[str]
    sentence: str


def _area(name: str, words: str, sentence: str) -> Area:
    return Area(name, frozenset(words.split()), sentence)


AREAS: tuple[Area, ...] = (
    _area(
        "danger",
        "danger safety unsafe abuse violence violent threat threats threatened suicide suicidal"
        " self-harm harm stalker stalking weapon assault missing",
        "If somebody may come to harm, leave the cards and call the emergency services, or people"
        " trained to help.",
    ),
    _area(
        "health",
        "health illness ill sick sickness disease doctor hospital diagnosis symptom symptoms"
        " operation surgery medicine medication treatment therapy pregnancy pregnant cancer"
        " depression anxiety addiction",
        "Cards are no diagnosis; for body and mind ask a doctor or another licensed practitioner.",
    ),
    _area(
        "law",
        "law legal court lawsuit lawyer solicitor custody divorce contract police tribunal visa"
        " eviction tenancy lease probate",
        "Cards are no legal advice; ask somebody licensed to give it, and go by the law where you"
        " live.",
    ),
    _area(
        "money",
        "money debt debts loan loans mortgage invest investment investments savings pension tax"
        " taxes insurance bankruptcy gambling lottery shares afford",
        "Cards are no financial advice; ask a licensed adviser before you sign or spend.",
    ),
)
"""The gravest first: a reading that touches several carries the first one's sentence."""

CONSENT = (
    "This was read for somebody else: keep it with their consent and between the two of you, and"
    " mind the local law on readings for others."
)


def areas(*texts: str) -> list[Area]:
    """The areas that the words of a topic or a question touch, the gravest first."""
    said = {word.casefold() for text in texts for word in _WORD.findall(text)}
    return [area for area in AREAS if area.words & said]


def for_another(querent: str) -> bool:
    """Whether a reading is for somebody other than the reader."""
    return querent.strip().casefold() not in _SELF


def caution(topic: str, question: str = "", querent: str = "") -> str:
    """What a reading carries at its foot: at most two sentences, or ''."""
    touched = areas(topic, question)
    sentences = [touched[0].sentence] if touched else []
    if for_another(querent):
        sentences.append(CONSENT)
    return " ".join(sentences)
