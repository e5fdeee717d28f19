"""What the writing desk does to whole lines: headings, lists, tick boxes, quotes, and the keys
Enter, Tab and Backspace within them. Numbers are put right as they go.
"""

import re
from typing import Literal, NamedTuple

from binder.page.editing.edit import Change, Edit, line_span, replaced, touched
from binder.page.editing.spans import TABLE
from binder.page.lines import Where, step

Want = Literal["bullet", "number", "tick", "quote"]
INDENT = 4
"""Spaces for each level of a list, as the syntax of 2004 counts."""

_LEAD = re.compile(
    r"(?P<quote>(?: {0,3}> ?)*)(?P<indent>[ \t]*)"
    r"(?:(?P<marker>[-*+]|\d{1,9}\.)(?:[ \t]+|$)(?P<box>\[[ xX]\](?:[ \t]+|$))?"
    r"|(?P<heading>#{1,6})(?:[ \t]+|$)|(?P<note>\[\^[^\]\s]+\]:[ \t]*))?"
)
_MOST_LINES = 2000


class Lead(NamedTuple):
    """What stands before the words of a line; `size` is the length of it all."""

    quote: str
    indent: str
    marker: str
    box: str
    heading: str
    note: str
    size: int

    def written(self) -> str:
        """The lead as it is written."""
        marks = f"{self.heading or self.marker} " if self.heading or self.marker else ""
        return self.quote + self.indent + marks + self.box + self.note

    @property
    def depth(self) -> int:
        """Columns the line is indented by, within its quote."""
        return len(self.indent.expandtabs(INDENT))


def lead(line: str) -> Lead:
    """The lead of a line."""
    match = _LEAD.match(line)
    if match is None:
        return Lead("", "", "", "", "", "", 0)
    quote, indented, marker, box, heading, note = (part or "" for part in match.groups())
    return Lead(quote, indented, marker, box, heading, note, match.end())


def in_code(text: str, at: int) -> bool:
    """Whether a place lies in fenced code; quick where the text has no fence at all."""
    if "```" not in text and "~~~" not in text:
        return False
    where = Where()
    first, last = line_span(text, at)
    for line in text[:first].split("\n")[:-1]:
        _, where = step(line, where)
    return step(text[first:last], where)[0] != "text"


def set_heading(text: str, start: int, end: int, level: int | None = None) -> Edit:
    """Make the lines headings of a level, or words again if they are; without a level each call
    goes on from words to a heading, to a smaller one, to words.
    """
    first, last = touched(text, start, end)
    lines = text[first:last].split("\n")
    now = len(lead(lines[0]).heading)
    goal = {0: 2, 2: 3}.get(now, 0) if level is None else (0 if level == now else level)
    made = [_with(line, marker="", box="", note="", heading="#" * goal) for line in lines]
    return _lines_edit(text, (first, last), made, start, end)


def toggle_list(text: str, start: int, end: int, want: Want) -> Edit:
    """Make the lines items of a list, or words again if all of them are."""
    first, last = touched(text, start, end)
    lines = text[first:last].split("\n")
    counted = [line for line in lines if line.strip()] or lines[:1]
    off = all(_is(line, want) for line in counted)
    made = [_listed(line, want, off) if line.strip() or len(lines) == 1 else line for line in lines]
    edit = _lines_edit(text, (first, last), made, start, end)
    return _renumbered(text, edit)


def _is(line: str, want: Want) -> bool:
    found = lead(line)
    if want == "tick":
        return bool(found.box)
    if want == "number":
        return found.marker[:1].isdigit() and not found.box
    return found.marker in ("-", "*", "+") and not found.box


def _listed(line: str, want: Want, off: bool) -> str:
    if off:
        return _with(line, marker="", box="", indent="")
    found = lead(line)
    keep = want == "tick" and found.marker
    marker = found.marker if keep else "1." if want == "number" else "-"
    box = "[ ] " if want == "tick" else ""
    return _with(line, marker=marker, box=box, heading="", note="")


def toggle_quote(text: str, start: int, end: int) -> Edit:
    """Put the lines in a quote, or take them out of it."""
    first, last = touched(text, start, end)
    lines = text[first:last].split("\n")
    off = all(lead(line).quote for line in lines)
    made = [re.sub(r"^ {0,3}> ?", "", line) if off else f"> {line}".rstrip(" ") for line in lines]
    if len(lines) == 1 and not off and not lines[0]:
        made = ["> "]
    return _lines_edit(text, (first, last), made, start, end)


def _with(line: str, **parts: str) -> str:
    """The line with other parts in its lead."""
    found = lead(line)
    made = found._replace(**parts)  # type: ignore[arg-type]
    return line if made == found else made.written() + line[found.size :]


def _lines_edit(text: str, span: tuple[int, int], made: list[str], start: int, end: int) -> Edit:
    """The edit to new lines, as many as before, the selection kept on the same words."""
    first, last = span
    old = text[first:last].split("\n")
    places = []
    for place in (start, end):
        at, line, new = _row(first, old, made, place)
        column = max(lead(new).size, place - at[0] + len(new) - len(line)) if old else 0
        places.append(at[1] + min(column, len(new)))
    return replaced(first, text[first:last], "\n".join(made), *places)


def _row(
    first: int, old: list[str], made: list[str], place: int
) -> tuple[tuple[int, int], str, str]:
    """Where the line of a place starts before and after, and the line before and after."""
    before = after = first
    for line, new in zip(old, made, strict=True):
        if place <= before + len(line):
            return (before, after), line, new
        before, after = before + len(line) + 1, after + len(new) + 1
    last = (before - len(old[-1]) - 1, after - len(made[-1]) - 1)
    return last, old[-1], made[-1]


def newline(text: str, at: int) -> Edit | None:
    """What Enter does: an item goes on with the next one, a quote with another line, an empty
    item ends its list; words begin a new paragraph. None where it is a line end and no more.
    """
    first, last = line_span(text, at)
    if in_code(text, at) or TABLE.match(text, first, last):
        return None
    found = lead(text[first:last])
    if not (found.marker or found.quote):
        return _paragraph(text, at, first, last)
    if at < first + found.size:
        return None
    if not text[first + found.size : last].strip():
        return _ended(text, first, last, found)
    box = "[ ] " if found.box else ""
    more = found._replace(marker=_next(found.marker), box=box).written()
    rest = len(text[at:last]) - len(text[at:last].lstrip(" "))
    place = at + 1 + len(more)
    return _renumbered(text, Edit((Change(at, at + rest, f"\n{more}"),), place, place))


def line_break(text: str, at: int) -> Edit | None:
    """What Shift+Enter does: another line of the same paragraph, as verse has them. None in a
    table, a heading and code, where a line end is all there can be.
    """
    first, last = line_span(text, at)
    found = lead(text[first:last])
    plain = TABLE.match(text, first, last) or found.heading or in_code(text, at)
    if plain or not text[first:at].strip():
        return None
    before = len(text[first:at]) - len(text[first:at].rstrip(" "))
    size = found.size - len(found.quote) if found.marker or found.note else 0
    made = f"  \n{found.quote}{' ' * size}"
    place = at - before + len(made)
    return Edit((Change(at - before, at, made),), place, place)


def _next(marker: str) -> str:
    return f"{int(marker[:-1]) + 1}." if marker[:1].isdigit() else marker


def _paragraph(text: str, at: int, first: int, last: int) -> Edit | None:
    """A blank line between two paragraphs, which is what parts them."""
    words = text[first:at].strip()
    if not words or lead(text[first:last]).heading:
        return None
    rest = len(text[at:last]) - len(text[at:last].lstrip(" "))
    return Edit((Change(at, at + rest, "\n\n"),), at + 2, at + 2)


def _ended(text: str, first: int, last: int, found: Lead) -> Edit:
    """An empty item moves out by a level; at the outermost it ends the list, a quote likewise."""
    if found.depth and found.marker:
        return indent(text, last, last, -1) or Edit((), last, last)
    if found.marker and found.quote:
        made = found.quote
    else:
        made = (
            "\n" if first and text[first - 1 : first] == "\n" and _said_above(text, first) else ""
        )
    place = first + len(made)
    return _renumbered(text, Edit((Change(first, last, made),), place, place))


def _said_above(text: str, first: int) -> bool:
    above = text[text.rfind("\n", 0, first - 1) + 1 : first - 1]
    return bool(above.strip())


def indent(text: str, start: int, end: int, by: int) -> Edit | None:
    """What Tab (by 1) and Shift+Tab (by -1) do to items; None where no item is selected."""
    first, last = touched(text, start, end)
    lines = text[first:last].split("\n")
    if not any(lead(line).marker for line in lines) or in_code(text, first):
        return None
    above = _item_above(text, first)
    made = []
    for line in lines:
        found = lead(line)
        if found.marker:
            line = _with(line, indent=" " * _depth(text, first, found, by, above))
            above = lead(line)
        made.append(line)
    return _renumbered(text, _lines_edit(text, (first, last), made, start, end))


def _depth(text: str, first: int, found: Lead, by: int, above: Lead | None) -> int:
    """Columns for an item one level further in, at most one below the item above; or out."""
    if by > 0:
        return found.depth if above is None else min(found.depth + INDENT, above.depth + INDENT)
    outer = _item_above(text, first, found.depth)
    return outer.depth if outer is not None else max(0, found.depth - INDENT)


def _item_above(text: str, first: int, within: int | None = None) -> Lead | None:
    """The item above, or the nearest one indented less than `within` columns."""
    for line in reversed(text[:first].split("\n")[-_MOST_LINES:-1]):
        found = lead(line)
        if found.marker and (within is None or found.depth < within):
            return found
        if line.strip() and not found.marker and not found.indent:
            return None
    return None


def backspace(text: str, at: int) -> Edit | None:
    """What Backspace does where the words of an item, a heading or a quote begin: the mark goes.
    Between two paragraphs it joins them. None anywhere else.
    """
    first, last = line_span(text, at)
    found = lead(text[first:last])
    if in_code(text, at):
        return None
    if at == first and at >= 2 and text[at - 2 : at] == "\n\n" and _joins(text, first, last):
        return Edit((Change(at - 2, at, ""),), at - 2, at - 2)
    if at != first + found.size or at == first:
        return None
    if found.marker and found.depth:
        return indent(text, at, at, -1)
    bare = found._replace(marker="", box="", indent="") if found.marker else found
    if found.heading:
        bare = found._replace(heading="")
    elif found.quote and not found.marker:
        bare = found._replace(quote="", indent="")
    if bare == found:
        return None
    place = first + len(bare.written())
    return _renumbered(text, Edit((Change(first, at, bare.written()),), place, place))


def _joins(text: str, first: int, last: int) -> bool:
    """Whether plain words stand below a blank line that plain words stand above."""
    start = text.rfind("\n", 0, first - 2) + 1
    above, below = text[start : first - 2], text[first:last]
    return all(_plain(line) for line in (above, below))


def _plain(line: str) -> bool:
    found = lead(line)
    bare = not (found.marker or found.heading or found.quote or found.note)
    return bool(line.strip()) and bare and not TABLE.match(line)


def _renumbered(text: str, edit: Edit) -> Edit:
    """The edit together with what it means for the numbers of the list around it."""
    if not edit.changes:
        return edit
    start, end = edit.changes[0].start, edit.changes[-1].end
    first, last = _around(text, start, end)
    old = text[first:last]
    new = old
    for change in reversed(edit.changes):
        new = new[: change.start - first] + change.text + new[change.end - first :]
    lines = new.split("\n")
    counted = _counted(lines)
    if counted == lines:
        return edit
    places = [
        _shifted(lines, counted, place - first) + first for place in (edit.anchor, edit.cursor)
    ]
    return replaced(first, old, "\n".join(counted), places[0], places[1])


def _around(text: str, start: int, end: int) -> tuple[int, int]:
    """The list around a stretch: up and down to words at the margin after a blank line."""
    first, last = line_span(text, start)[0], line_span(text, end)[1]
    above = text[:first].split("\n")[-_MOST_LINES:-1]
    for line in reversed(above):
        if not _goes_on(line):
            break
        first -= len(line) + 1
    for line in text[last:].split("\n")[1:_MOST_LINES]:
        if not _goes_on(line):
            break
        last += len(line) + 1
    return first, last


def _goes_on(line: str) -> bool:
    found = lead(line)
    return bool(found.marker or found.indent) or not line.strip()


def _counted(lines: list[str]) -> list[str]:
    """The lines with each list's numbers in order, from the number its first item has."""
    last: dict[tuple[str, int], int] = {}
    made = []
    for line in lines:
        found = lead(line)
        if found.marker:
            place = (found.quote, found.depth)
            last = {key: n for key, n in last.items() if key[1] <= found.depth}
            if not found.marker[0].isdigit():
                last[place] = 0
            else:
                first = 1 if found.depth else int(found.marker[:-1])
                last[place] = last[place] + 1 if place in last else first
                line = _with(line, marker=f"{last[place]}.")
        elif line.strip() and not found.indent:
            last = {}
        made.append(line)
    return made


def _shifted(old: list[str], new: list[str], place: int) -> int:
    """A place in the old lines, counted in the new ones."""
    at = 0
    for before, after in zip(old, new, strict=True):
        if place - at <= len(before):
            return place if place - at == 0 else place + len(after) - len(before)
        place += len(after) - len(before)
        at += len(after) + 1
    return place
