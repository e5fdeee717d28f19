"""What has no end of its own: leaves made to be slow to set, a library pasted, a line of shorthand
without end, the facts of all cards at every start.

Each against what the program allows it, or against a bare library on the same data; in processor
seconds, for others on the machine matter little to those.
"""

import runpy

from bench_prose import took
from bs4 import BeautifulSoup

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
    yield f"the slowest leaf of its kind ({worst}) / allowed", allowed(HOSTILE[worst]), "2"
    leaf = "# One & <two>\n\nthree\nfour\r\n\r\n*five*\n\n" * 150_000
    ours, bare = took(lambda: to_html(leaf), 3), took(lambda: "\n".join(leaf.split("\n")), 3)
    yield "five megabytes shown as they were typed / split and joined", ours / bare, "20"
    html = "<p>word <b>word</b></p>" * (LONGEST // 20)
    ours = took(lambda: from_html(html), 1)
    bare = took(lambda: BeautifulSoup(html, "html.parser").get_text(), 1)
    yield "a library of HTML pasted / its words by the bare parser", ours / bare, "2"
    line = "zyx " * 1_000_000
    ours, short = took(lambda: read(line), 3), took(lambda: read(line[:LONGEST_LINE]), 3)
    yield "four million letters of shorthand / as many as are read", ours / short, "2"
    seconds = took(lambda: runpy.run_path(facts.__file__), 20)
    yield "facts of all cards read / one frame", seconds * 60, "0.5"


def allowed(text):
    """Processor seconds of a leaf over what a leaf of its length may take."""
    return took(lambda: to_html(text), 1) / (watch.AT_LEAST + len(text) * watch.A_CHARACTER)
