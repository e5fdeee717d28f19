"""Which readings carry a caution, and what it says: short, plain, once.

Common practice among readers, and what codes of conduct of their associations have in common: no
diagnosis, no legal or financial advice, no reading in place of help in danger, and consent and
discretion where somebody else is read for. Licensed practice and local law come first.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

_WORD = re.compile(r"[^\W\d_]+(?:-[^\W\d_]+)*")
_AGE = re.compile(
    r"\b(?:aged?(?: of)? (\d{1,2})|(\d{1,2})[- ]years?[- ]old|(\d{1,2})[- ]year[- ]olds)\b", re.I
)
_COURTS = re.compile(r"\bcourt cards?\b", re.I)
"""The pages, knights, queens and kings, and no court of law."""
UNDER_AGE = "under age"
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
        " self-harm harm stalker stalking weapon assault assaulted rape overdose blackmail",
        "If somebody is in danger, leave the cards and call your local emergency services, or"
        " people trained to help.",
    ),
    _area(
        UNDER_AGE,
        "child children kid kids baby toddler infant teenager teenagers teen teens underage"
        " under-age schoolboy schoolgirl pupil grandchild grandchildren stepchild godchild",
        "Where somebody under age is concerned, parents or guardians decide, and local law sets"
        " the bounds.",
    ),
    _area(
        "health",
        "health illness ill sick sickness disease doctor hospital diagnosis symptom symptoms"
        " operation surgery medicine medication treatment therapy pregnancy pregnant cancer"
        " depression anxiety addiction medicines medications tablets pills dose prescription"
        " prescribed insulin antidepressants chemotherapy tumour tumor biopsy miscarriage dementia"
        " psychiatrist doctors",
        "Cards are no diagnosis; for body and mind a doctor or another licensed practitioner"
        " decides.",
    ),
    _area(
        "law",
        "law legal court lawsuit lawyer solicitor custody divorce contract police tribunal visa"
        " eviction tenancy lease probate sue sued suing arrest arrested prison bail lawyers"
        " solicitors attorney asylum inheritance",
        "Cards are no legal advice; ask somebody licensed to give it, and go by your local law.",
    ),
    _area(
        "money",
        "money debt debts loan loans mortgage invest investment investments savings pension tax"
        " taxes insurance bankruptcy gambling lottery shares afford bankrupt borrow crypto",
        "Cards are no financial advice; ask a licensed adviser before you sign or spend.",
    ),
)
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
    """The areas that the words of a topic or a question touch, the gravest first."""
    said = {word.casefold() for text in texts for word in _WORD.findall(_COURTS.sub("", text))}
    young = any(_is_young(match) for text in texts for match in _AGE.finditer(text))
    return [a for a in AREAS if a.words & said or (young and a.name == UNDER_AGE)]


def _is_young(match: re.Match[str]) -> bool:
    """Whether an age that is named is below 18; where full age is another, local law says so."""
    return int(match[1] or match[2] or match[3]) < 18


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


def initials(name: str) -> str:
    """'A. Q.' for 'Ada Quillfeather'; what are initials already, or one word, stays as it is."""
    words = name.split()
    if len(words) < 2 or all(len(word.strip(".")) < 2 for word in words):
        return " ".join(words)
    return " ".join(f"{word[0].upper()}." for word in words if word[0].isalpha())
