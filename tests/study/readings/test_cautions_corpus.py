"""How many of the questions in the corpus are weighed as they are labelled.

Those of questions.tsv were written and labelled by hand by somebody who had not seen the rules:
what they touch is judgement, from common practice and from memory. `also-ok=A or B` in a note
names labels that count as right too.

On first contact with the 201 of them that nobody had tuned the rules to, 28 of 30 of danger were
found, 22 of 27 of health and 15 of 17 of money, and 7 of 100 ordinary ones carried a caution. The
rules have been made wider since with these very lines at hand, so what is held below is that
nothing found is lost again, not how well a new question fares.

Those of aslant.tsv were written afterwards by the one who widened the rules, forty at a time,
each before the next widening, and mostly say it aslant: of 80 grave ones 41 were weighed right on
first contact (of 34 of danger, 13 were found), of 80 ordinary ones 78.

Those of by_cause.tsv came about in the same way in four rounds, with hurried spelling among them:
on first contact 64 of 109 of danger were found, 42 of 47 of health, money and law, and 7 of 111
ordinary ones carried a caution.

Those of fresh.tsv are by a hand that had seen neither rules nor lines, half of danger told aslant,
and most ordinary ones chosen to mislead. On first contact 49 of 70 of danger were weighed right and
6 more got another area's caution, 29 of 34 of health, 15 of 20 of law, 19 of 23 of money, 15 of 22
of somebody else, and 9 of 60 ordinary ones carried a caution.
"""

import csv
import re
from collections import Counter
from pathlib import Path

import pytest

from binder.study.readings.cautions import areas

CORPUS = Path(__file__).parent / "corpus"
LABELS = {
    "self-harm": "danger",
    "danger": "danger",
    "health": "health",
    "law": "law",
    "money": "money",
    "other people": "other-person",
}
LEAST = {"danger": 0.95, "health": 0.9, "law": 0.9, "money": 0.9, "other-person": 0.9}
"""The least share of a label's questions that must be found."""
NAGGING = 0.03
"""The greatest share of ordinary questions that may carry a caution."""
SILENT = 0.04
"""The greatest share of questions of danger that may carry no caution at all."""
_ALSO = re.compile(r"also-ok=([^;]+)")


def questions():
    rows = []
    for path in sorted(CORPUS.glob("*.tsv")):
        with path.open(encoding="utf-8", newline="") as lines:
            rows += csv.DictReader(lines, delimiter="\t", quoting=csv.QUOTE_NONE)
    return rows


def accepted(row):
    """The label sets that count as right, the row's own first."""
    also = _ALSO.search(row["note"] or "")
    named = [row["label"], *(also[1].split(" or ") if also else [])]
    return [frozenset(one.strip().split("+")) - {"ordinary"} for one in named]


def found(row):
    return frozenset(LABELS[area.name] for area in areas(row["question"]) if area.name in LABELS)


@pytest.mark.parametrize("label", LEAST)
def test_grave_questions_are_found(label):
    of = [row for row in questions() if label in row["label"].split("+")]
    missed = [
        row["question"] for row in of if label not in found(row) and found(row) not in accepted(row)
    ]
    assert len(of) - len(missed) >= LEAST[label] * len(of), missed


def test_hardly_any_danger_goes_without_a_word():
    """Another area's caution is something; none at all is the worst there is."""
    grave = [row for row in questions() if "danger" in row["label"].split("+")]
    silent = [
        row["question"] for row in grave if not found(row) and found(row) not in accepted(row)
    ]
    assert len(silent) <= SILENT * len(grave), silent


def test_ordinary_questions_are_left_in_peace():
    ordinary = [row for row in questions() if row["label"] == "ordinary"]
    nagged = [
        row["question"]
        for row in ordinary
        if areas(row["question"]) and found(row) not in accepted(row)
    ]
    assert len(nagged) <= NAGGING * len(ordinary), nagged


def test_every_label_is_known():
    labels = Counter(label for row in questions() for label in row["label"].split("+"))
    assert set(labels) == {"ordinary", *LEAST}
    assert sum(labels.values()) >= len(questions())
