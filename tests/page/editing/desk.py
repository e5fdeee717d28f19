"""Edits written with the cursor shown as ‸ in the text, or the selection between two of them."""

from binder.page.editing.edit import Edit, applied

CURSOR = "‸"


def opened(shown):
    """The text, and where its selection starts and ends."""
    start = shown.index(CURSOR)
    rest = shown[start + 1 :]
    end = start + rest.index(CURSOR) if CURSOR in rest else start
    return shown.replace(CURSOR, ""), start, end


def shown(text, edit: Edit):
    """The text after an edit, its selection marked."""
    made = applied(text, edit)
    start, end = sorted((edit.anchor, edit.cursor))
    if start == end:
        return made[:start] + CURSOR + made[start:]
    return made[:start] + CURSOR + made[start:end] + CURSOR + made[end:]


def sound(text, edit):
    """Whether the changes stand in order within the text, and the selection within the result."""
    places = [place for change in edit.changes for place in change[:2]]
    inside = all(0 <= place <= len(text) for place in places) and places == sorted(places)
    made = len(applied(text, edit))
    return inside and 0 <= edit.anchor <= made and 0 <= edit.cursor <= made


def do(verb, before, *more):
    """What a verb makes of a shown text; None where it does nothing of its own."""
    text, start, end = opened(before)
    edit = verb(text, start, end, *more)
    assert edit is None or sound(text, edit)
    return edit and shown(text, edit)


def press(verb, before, *more):
    """The same for a verb that takes a cursor only."""
    text, start, _ = opened(before)
    edit = verb(text, start, *more)
    assert edit is None or sound(text, edit)
    return edit and shown(text, edit)
