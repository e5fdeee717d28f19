"""Words of which one is chosen, in a head as wide as the leaf."""

import pytest
from PySide6.QtWidgets import QApplication

from ui.kit.forms.switch import Switch


@pytest.mark.parametrize("scale", [1.0, 2.0])
@pytest.mark.parametrize("wide", [150, 260, 520])
def test_every_word_is_within_the_head(qtbot, look, scale, wide):
    look.set_scale(scale)
    switch = Switch(look, ("By card", "Place", "Spread", "Deck", "Topic"))
    qtbot.addWidget(switch)
    switch.resize(wide, switch.height())
    switch.show()
    QApplication.processEvents()
    for word in switch.words:
        assert switch.rect().contains(word.geometry())
    boxes = [word.geometry() for word in switch.words]
    assert not any(a.intersects(b) for a in boxes for b in boxes if a != b)


def test_words_lie_in_one_row_where_there_is_room(qtbot, look):
    switch = Switch(look, ("Shorthand", "Pick a face"))
    qtbot.addWidget(switch)
    switch.resize(520, switch.height())
    assert len({word.y() for word in switch.words}) == 1
