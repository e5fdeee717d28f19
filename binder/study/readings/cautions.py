"""Which readings carry a caution, and what it says: short, plain, once.

Common practice among readers, and what codes of conduct of their associations have in common: no
diagnosis, no legal or financial advice, no reading in place of help in danger, and consent and
discretion where somebody else is read for. Licensed practice and local law come first.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from binder.study.readings.touched import touched

_AGE = re.compile(
    r"\b(?:aged?(?: of)? (\d{1,2})|(\d{1,2})[- ]years?[- ]old|(\d{1,2})[- ]year[- ]olds)\b", re.I
)
UNDER_AGE = "under age"
_SELF = frozenset({"", "self", "me", "myself", "i"})


@dataclass(frozen=True, slots=True)
class Area:
    """A field in which cards are no counsel; `matter` is its name in `touched.MATTERS`.

    What is `urgent` is said first and alone, and shown so that nobody can miss it.
    """

    name: str
    matter: str
    sentence: str
    urgent: bool = False


AREAS: tuple[Area, ...] = (
    Area(
        "self-harm", "self-harm",
        "If you may harm yourself, or fear it of somebody, call the emergency number where you are,"
        " now. Talk to someone you trust, or to a crisis line where you live. The cards can wait.",
        urgent=True,
    ),
    Area(
        "danger", "violence",
        "If you or somebody else is in danger, leave the cards and call the emergency number where"
        " you are, now. Tell someone you trust, or people where you live who help in such need.",
        urgent=True,
    ),
    Area(
        "health", "health",
        "Cards are no diagnosis; for body and mind a doctor or another licensed practitioner"
        " decides.",
    ),
    Area(
        "law", "law",
        "Cards are no legal advice; ask somebody licensed to give it, and go by your local law.",
    ),
    Area(
        "money", "money",
        "Cards are no financial advice; ask a licensed adviser before you sign or spend.",
    ),
    Area(
        UNDER_AGE, "under-age",
        "Where somebody under age is concerned, parents or guardians decide, and local law sets"
        " the bounds.",
    ),
    Area(
        "other people", "others",
        "Cards cannot say what somebody else feels, hides or will do; only they can tell you.",
    ),
)  # fmt: skip
"""The gravest first: a reading that touches several carries the first one's sentence."""

CONSENT = (
    "This was read for somebody else: have their consent, keep initials rather than a name and no"
    " more about them than you need, show it to nobody, and mind the local law."
)
"""What is owed to a querent, and a reminder of what is kept about them."""

ASK_FIRST = (
    "Ask for their consent first. Kept of them, in this binder alone: what stands here, the"
    " question, the cards and what you write."
)
"""The same while the reading is being logged, when there is still time to ask."""


def areas(*texts: str) -> list[Area]:
    """The areas that a topic or a question touches, the gravest first."""
    found = frozenset().union(*(touched(text) for text in texts))
    young = any(_is_young(match) for text in texts for match in _AGE.finditer(text))
    return [a for a in AREAS if a.matter in found or (young and a.name == UNDER_AGE)]


def gravest(topic: str, question: str) -> Area | None:
    """The area whose sentence a reading carries, if it touches any."""
    return next(iter(areas(topic, question)), None)


def _is_young(match: re.Match[str]) -> bool:
    """Whether an age that is named is below 18; where full age is another, local law says so."""
    return int(match[1] or match[2] or match[3]) < 18


def for_another(querent: str) -> bool:
    """Whether a reading is for somebody other than the reader."""
    return querent.strip().casefold() not in _SELF


def caution(topic: str, question: str = "", querent: str = "") -> str:
    """What a reading carries: what is said of its gravest area and of another's consent, or ''."""
    area = gravest(topic, question)
    sentences = [area.sentence] if area else []
    if for_another(querent):
        sentences.append(CONSENT)
    return " ".join(sentences)


def initials(name: str) -> str:
    """'A. Q.' for 'Ada Quillfeather'; what are initials already, or one word, stays as it is."""
    words = name.split()
    if len(words) < 2 or all(len(word.strip(".")) < 2 for word in words):
        return " ".join(words)
    return " ".join(f"{word[0].upper()}." for word in words if word[0].isalpha())
