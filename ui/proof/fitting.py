"""The usual holes give way to others where the paper that is chosen is too low for them."""

from __future__ import annotations

from PySide6.QtWidgets import QComboBox

from binder.paper.sheets import USUAL_HOLES, usual_holes


def keep_fitting(paper: QComboBox, holes: QComboBox) -> None:
    """Let two lists of choices go together; holes that are not the usual ones are left alone."""

    def fit(_at: int) -> None:
        if holes.currentData() == USUAL_HOLES[0]:
            holes.setCurrentIndex(holes.findData(usual_holes(paper.currentData())))

    paper.currentIndexChanged.connect(fit)
