"""What benches of painted things are measured against: a pair of bare text browsers that is given
the HTML of two leaves and painted, by turns with ours, so that both meet the same machine.
"""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QApplication, QTextBrowser

SIZE = (524, 850)
"""Pixels of a leaf in a window of 1600x1000."""
PARAGRAPH = (
    "<p>The lantern stood on the <em>quay</em> till morning, and nobody had said whose it was. "
    "I asked about the <a href='card:major-09'>Hermit</a>, and was told <strong>to wait</strong>. "
    "By noon the ferry had gone twice and come back once; so much for the timetable.</p>"
)
LEAVES = (
    f"<h1>When to open the kiln</h1>{PARAGRAPH * 4}<ul>{'<li>One thing more</li>' * 6}</ul>",
    f"<h1>The Hermit</h1>{PARAGRAPH * 3}<blockquote>{PARAGRAPH}</blockquote>{PARAGRAPH}",
)


class BarePair:
    """Two bare browsers; called, they are given a leaf each, the other than last time, painted."""

    def __init__(self, size: tuple[int, int] = SIZE) -> None:
        self.browsers = [QTextBrowser(), QTextBrowser()]
        for browser in self.browsers:
            browser.resize(*size)
            browser.show()
        self.turned = 0
        self()

    def __call__(self) -> None:
        self.turned += 1
        for number, browser in enumerate(self.browsers):
            browser.setHtml(LEAVES[(number + self.turned) % 2])
            browser.viewport().repaint()

    def end(self) -> None:
        """Close both for good."""
        for browser in self.browsers:
            browser.close()
            browser.deleteLater()
            QApplication.sendPostedEvents(browser, QEvent.Type.DeferredDelete)
