"""What has no end of its own: leaves made to be slow to set, a library pasted, a line of shorthand
without end, the facts of all cards at every start.

Each against what the program allows it, or against a bare library on the same data; in processor
seconds, for others on the machine matter little to those.
"""

import runpy
from time import process_time

from bs4 import BeautifulSoup
from measuring import FRAME, ROUNDS, Row, against, compared, once

from binder.cards import facts
from binder.cards.shorthand import LONGEST as LONGEST_LINE
from binder.cards.shorthand import read
from binder.page.markup import watch
from binder.page.markup.markdown import to_html
from binder.page.markup.paste import LONGEST, from_html
from tests.page.hostile import HOSTILE


def rows(_folder):
    """The slowest hostile leaf, a leaf of five megabytes, paste, shorthand, facts."""
    worst = max(HOSTILE, key=lambda name: allowed(HOSTILE[name]))
    taken = tuple(allowed(HOSTILE[worst]) for _ in range(ROUNDS))
    yield Row(f"the slowest leaf of its kind ({worst}) / allowed", taken, 2, absolute=True)
    leaf = "# One & <two>\n\nthree\nfour\r\n\r\n*five*\n\n" * 150_000
    yield processor(
        "five megabytes shown as they were typed / split and joined",
        lambda: to_html(leaf), lambda: "\n".join(leaf.split("\n")), 20,
    )  # fmt: skip
    html = "<p>word <b>word</b></p>" * (LONGEST // 20)
    yield processor(
        "a library of HTML pasted / its words by the bare parser",
        lambda: from_html(html), lambda: BeautifulSoup(html, "html.parser").get_text(), 2,
    )  # fmt: skip
    line = "zyx " * 1_000_000
    yield processor(
        "four million letters of shorthand / as many as are read",
        lambda: read(line), lambda: read(line[:LONGEST_LINE]), 2,
    )  # fmt: skip
    seconds = [once(lambda: runpy.run_path(facts.__file__), process_time) for _ in range(ROUNDS)]
    yield against("facts of all cards read / one frame", seconds, FRAME, 0.5)


def processor(what, ours, bare, bound):
    """Compared in processor seconds."""
    return compared(what, ours, bare, bound, clock=process_time)


def allowed(text):
    """Processor seconds of a leaf over what a leaf of its length may take."""
    return once(lambda: to_html(text), process_time) / (
        watch.AT_LEAST + len(text) * watch.A_CHARACTER
    )
