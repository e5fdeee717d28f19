"""What the writing desk does to Markdown: each verb takes a text and a selection, and says what
to change. The text itself is never held here; `applied` does an edit to a string.
"""

import re
from typing import NamedTuple

from binder.page.editing.spans import Pair, Style, pairs

WORD = re.compile(r"[\w’'-]*\Z"), re.compile(r"[\w’'-]*")
MARKS: dict[Style, str] = {"bold": "**", "italic": "*", "struck": "~~", "code": "`"}
_CALLS = re.compile(r"\[\^(\d+)\]")
_LEAD = re.compile(r"[ \t>]*(?:(?:[-*+]|\d{1,9}\.)[ \t]+(?:\[[ xX]\][ \t]+)?|#{1,6}[ \t]+)?")


class Change(NamedTuple):
    """`text` in place of what stands from `start` to `end`."""

    start: int
    end: int
    text: str


class Edit(NamedTuple):
    """Changes in the order of their places, none touching another, all counted in the text as it
    was; `anchor` and `cursor` are the selection afterwards, counted in the text as it will be.
    """

    changes: tuple[Change, ...]
    anchor: int
    cursor: int


def applied(text: str, edit: Edit) -> str:
    """The text after an edit."""
    for change in reversed(edit.changes):
        text = text[: change.start] + change.text + text[change.end :]
    return text


def replaced(start: int, old: str, new: str, anchor: int, cursor: int) -> Edit:
    """The edit that makes `new` of the `old` text at `start`, changing no more than it must."""
    size = min(len(old), len(new))
    head = next((n for n in range(size) if old[n] != new[n]), size)
    size -= head
    tail = next((n for n in range(size) if old[-1 - n] != new[-1 - n]), size)
    change = Change(start + head, start + len(old) - tail, new[head : len(new) - tail])
    changes = (change,) if change.text or change.start < change.end else ()
    return Edit(changes, anchor, cursor)


def line_span(text: str, at: int) -> tuple[int, int]:
    """Where the line around a place starts and ends."""
    end = text.find("\n", at)
    return text.rfind("\n", 0, at) + 1, len(text) if end < 0 else end


def touched(text: str, start: int, end: int) -> tuple[int, int]:
    """Where the lines of a selection start and end; a line only touched at its edge is not one."""
    if end > start and text[end - 1] == "\n":
        end -= 1
    return line_span(text, start)[0], line_span(text, end)[1]


def toggle(text: str, start: int, end: int, style: Style) -> Edit:
    """Make the selected words, or the word at the cursor, bold (italic, ...) or no longer so."""
    mark = MARKS[style]
    if start == end:
        return _toggle_word(text, start, style, mark)
    pieces = [_bare(text, piece, style) for piece in _pieces(text, start, end)]
    inside = [_around(text, piece, style) for piece in pieces]
    if pieces and all(inside):
        return _unmarked(text, pieces, [pair for pair in inside if pair], mark)
    return _marked(text, pieces, style, mark, (start, end))


def _toggle_word(text: str, at: int, style: Style, mark: str) -> Edit:
    size = len(mark)
    if text[at - size : at] == mark == text[at : at + size] and not _pair_at(text, at, style):
        return Edit((Change(at - size, at + size, ""),), at - size, at - size)
    pair = _pair_at(text, at, style)
    if pair is not None and at == pair.end:
        return Edit((), pair.close, pair.close)
    if pair is not None:
        gone = (Change(pair.open, pair.start, ""), Change(pair.end, pair.close, ""))
        place = at - (pair.start - pair.open)
        return Edit(gone, place, place)
    before, after = WORD
    first, last = line_span(text, at)
    left = before.search(text[first:at])
    right = after.match(text, at, last)
    start, end = at - len(left[0] if left else ""), right.end() if right else at
    if start == end:
        return Edit((Change(at, at, mark + mark),), at + size, at + size)
    changes = (Change(start, start, mark), Change(end, end, mark))
    return Edit(changes, at + size, at + size)


def _pair_at(text: str, at: int, style: Style) -> Pair | None:
    """The innermost stretch of that style around a place, counted in the whole text."""
    return _around(text, (at, at), style)


def _around(text: str, piece: tuple[int, int], style: Style) -> Pair | None:
    first, last = line_span(text, piece[0])
    start, end = piece[0] - first, piece[1] - first
    for pair in reversed(pairs(text[first:last])):
        if pair.style == style and pair.start <= start and end <= pair.end:
            moved = (pair.open + first, pair.start + first, pair.end + first, pair.close + first)
            return Pair(style, *moved)
    return None


def _pieces(text: str, start: int, end: int) -> list[tuple[int, int]]:
    """What is selected of each line, without the line's lead and without blanks at its ends."""
    found = []
    while start <= end:
        first, last = line_span(text, start)
        lead = _LEAD.match(text, first, last)
        left = max(start, lead.end() if lead else first)
        right = min(end, last)
        words = text[left:right]
        if words.strip():
            left += len(words) - len(words.lstrip())
            right -= len(words) - len(words.rstrip())
            found.append((left, right))
        start = last + 1
    return found


def _bare(text: str, piece: tuple[int, int], style: Style) -> tuple[int, int]:
    """The piece without marks of that style at its ends."""
    start, end = piece
    first, last = line_span(text, start)
    for pair in pairs(text[first:last]):
        if pair.style == style:
            start = pair.start + first if start == pair.open + first else start
            end = pair.end + first if end == pair.close + first else end
    return start, max(start, end)


def _unmarked(text: str, pieces: list[tuple[int, int]], inside: list[Pair], mark: str) -> Edit:
    """Take the style off the pieces; what is left of a stretch before and after keeps it."""
    changes = []
    for (start, end), pair in zip(pieces, inside, strict=True):
        left, right = text[pair.start : start], text[end : pair.end]
        gap = left[len(left.rstrip()) :]
        changes.append(
            Change(start - len(gap), start, mark + gap)
            if left.strip()
            else Change(pair.open, pair.start, "")
        )
        gap = right[: len(right) - len(right.lstrip())]
        changes.append(
            Change(end, end + len(gap), gap + mark)
            if right.strip()
            else Change(pair.end, pair.close, "")
        )
    return _selected(tuple(changes), pieces)


def _marked(
    text: str,
    pieces: list[tuple[int, int]],
    style: Style,
    mark: str,
    selection: tuple[int, int],
) -> Edit:
    """Put the style on the pieces, swallowing what had it already."""
    changes: list[Change] = []
    for start, end in pieces:
        first, last = line_span(text, start)
        for pair in pairs(text[first:last]):
            opened, closed = pair.open + first, pair.close + first
            if pair.style == style and opened < end and closed > start:
                changes.append(Change(opened, pair.start + first, ""))
                changes.append(Change(pair.end + first, closed, ""))
                start, end = min(start, opened), max(end, closed)
        changes += [Change(start, start, mark), Change(end, end, mark)]
    if not pieces:
        return Edit((), *selection)
    return _selected(_joined(changes), pieces)


def _joined(changes: list[Change]) -> tuple[Change, ...]:
    """Changes in order, those at one place made one."""
    made: list[Change] = []
    for change in sorted(changes):
        if made and change.start <= made[-1].end and made[-1].start <= change.start:
            last = made.pop()
            change = Change(last.start, max(last.end, change.end), last.text + change.text)
        made.append(change)
    return tuple(made)


def _selected(changes: tuple[Change, ...], pieces: list[tuple[int, int]]) -> Edit:
    """The edit that leaves the words selected that were."""
    anchor, cursor = pieces[0][0], pieces[-1][1]
    return Edit(changes, _moved(anchor, changes, True), _moved(cursor, changes, False))


def _moved(place: int, changes: tuple[Change, ...], after: bool) -> int:
    """Where a place goes: `after` what is put in right there, or before it."""
    shift = 0
    for change in changes:
        if change.end < place or (change.end == place and (after or change.start < place)):
            shift += len(change.text) - (change.end - change.start)
        elif change.start < place:
            return change.start + shift + len(change.text)
    return place + shift


def link(text: str, start: int, end: int, address: str, label: str) -> Edit:
    """A link at the selection: the selected words become its label, else `label` does."""
    words = text[start:end] if end > start and "\n" not in text[start:end] else label
    words = re.sub(r"(?<!\\)([\[\]])", r"\\\1", words.strip() or label)
    made = f"[{words}]({address})"
    at = start + len(made)
    return Edit((Change(start, end, made),), at, at)


def unlink(text: str, at: int) -> Edit | None:
    """The words of the link around a place without the link; None where there is none."""
    pair = _around(text, (at, at), "link")
    if pair is None or text[pair.open] == "!":
        return None
    gone = (Change(pair.open, pair.start, ""), Change(pair.end, pair.close, ""))
    place = at - (pair.start - pair.open)
    return Edit(gone, place, place)


def footnote(text: str, at: int) -> Edit:
    """A footnote called at a place, its own line begun at the end; from that line, the way back."""
    first, last = line_span(text, at)
    own = re.match(r"\[\^([^\]\s]+)\]:", text[first:last])
    if own:
        call = re.search(rf"\[\^{re.escape(own[1])}\](?!:)", text)
        back = call.end() if call else at
        return Edit((), back, back)
    number = max((int(found) for found in _CALLS.findall(text)), default=0) + 1
    called = f"[^{number}]"
    gap = "\n" if _ends_with_note(text) else "\n\n"
    kept = len(text.rstrip("\n"))
    line = f"{gap if kept else ''}{called}: "
    if at >= kept:
        made = Change(at, len(text), called + "\n\n" + f"{called}: ")
        return Edit((made,), at + len(made.text), at + len(made.text))
    end = kept + len(called) + len(line)
    return Edit((Change(at, at, called), Change(kept, len(text), line)), end, end)


def _ends_with_note(text: str) -> bool:
    stripped = text.rstrip("\n")
    return bool(re.match(r"\[\^[^\]\s]+\]:", stripped[stripped.rfind("\n") + 1 :]))


def put_block(text: str, start: int, end: int, block: str) -> Edit:
    """Put something that stands by itself, as a table, between blank lines; the cursor is at the
    start of the block.
    """
    before = text[:start].rstrip("\n")
    above = "" if not before else "\n\n"
    gap = len(text) - len(text[end:].lstrip("\n"))
    below = "\n\n" if text[gap:] else "\n"
    place = len(before) + len(above)
    return Edit((Change(len(before), gap, above + block + below),), place, place)
