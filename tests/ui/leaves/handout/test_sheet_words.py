"""Letters on a sheet: none is selected before the pointer selects it."""

from ui.leaves.handout.sheet_words import SheetWords


def test_on_a_sheet_not_read_yet_nothing_is_selected_or_marked():
    words = SheetWords()
    assert words.selected == (0, 0)
    assert words.rects(words.selected) == words.marks == []
    assert (words.text(), words.current) == ("", None)
