"""Where everything in the open binder lies, worked out from the room there is. No painting.

Two leaves lie side by side when each can hold a fair line of text; else one leaf lies open and
only a strip of its neighbour shows behind the rings.
"""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRect, QRectF, QSize

AROUND = (20, 14, 16, 14)
"""Desk left free around the boards: left, top, right, bottom."""
BOARD = 16
GUTTER = 16
RING_REACH = 32
"""From the middle of the gutter to the hole a ring goes through."""
OUTER_MARGIN, RING_MARGIN, TOP_MARGIN = 40, 64, 30
LEAST_TEXT, MOST_TEXT = 314, 720
"""Narrowest text with two leaves, widest text with any; both grow with the text's scale."""
WIDEST_LEAF = 0.8
"""Widest leaf as a share of its height."""
RINGS = (0.174, 0.5, 0.826)
PLATE = (0.05, 0.95)
"""Places down the leaf, as shares of its height."""
FOLD_ON, FOLD_BACK = 60, 34


@dataclass(frozen=True)
class Frame:
    """Rectangles of one arrangement. Those of a leaf that is only a strip hold no text."""

    narrow: bool
    side: str
    boards: QRectF
    left: QRectF
    right: QRectF
    gutter: QRectF
    plate: QRectF
    rings: tuple[QPointF, ...]
    left_text: QRect
    right_text: QRect
    left_foot: QRect
    right_foot: QRect
    tabs: QRect
    fold_on: QRect
    fold_back: QRect
    flip: QRect

    def shows(self, side: str) -> bool:
        """Whether the leaf of this side ('left', 'right') lies open."""
        return not self.narrow or self.side == side


def tab_width(scale: float) -> int:
    """How far a divider tab reaches out over the boards."""
    return round(24 + 16 * scale)


def strip_width(scale: float) -> int:
    """How much of the neighbour shows when one leaf lies open."""
    return round(RING_REACH + 6 + 28 * scale)


def frame(size: QSize, scale: float = 1.0, side: str = "left") -> Frame:
    """Lay the binder out in a size; `side` is the leaf to show where only one has room."""
    room = QRectF(0, 0, size.width(), size.height()).adjusted(
        AROUND[0], AROUND[1], -AROUND[2], -AROUND[3]
    )
    tail = tab_width(scale) + 24
    each = (room.width() - BOARD - GUTTER - tail) / 2
    narrow = each - OUTER_MARGIN - RING_MARGIN < LEAST_TEXT * scale
    if narrow:
        strip = strip_width(scale)
        shown, rest = 2 * each - strip, float(strip)
        widths = (shown, rest) if side == "left" else (rest, shown)
        boards = room
    else:
        least = OUTER_MARGIN + LEAST_TEXT * scale + RING_MARGIN
        each = min(each, max(least, WIDEST_LEAF * (room.height() - 2 * AROUND[1])))
        widths = (each, each)
        spare = room.width() - (2 * each + BOARD + GUTTER + tail)
        boards = room.adjusted(spare / 2, 0, -spare / 2, 0)
    # Where both leaves lie open it does not matter which is wanted: the painting stays the same.
    return _placed(narrow, side if narrow else "left", boards, widths, scale)


def _placed(
    narrow: bool, side: str, boards: QRectF, widths: tuple[float, float], scale: float
) -> Frame:
    top, height = boards.top() + 14, boards.height() - 28
    left = QRectF(boards.left() + BOARD, top, widths[0], height)
    gutter = QRectF(left.right(), top, GUTTER, height)
    right = QRectF(gutter.right(), top, widths[1], height)
    middle = gutter.center().x()
    foot = round(22 * scale)
    fold_on = min(FOLD_ON, round(widths[1] * 0.6))
    fold_back = min(FOLD_BACK, round(widths[0] * 0.5))
    left_text = _text(left, OUTER_MARGIN, RING_MARGIN, foot, scale)
    right_text = _text(right, RING_MARGIN, OUTER_MARGIN, foot, scale)
    foot_top = round(left.bottom()) - 16 - foot
    right_end = min(right_text.right(), round(right.right()) - fold_on - 10)
    return Frame(
        narrow=narrow,
        side=side,
        boards=boards,
        left=left,
        right=right,
        gutter=gutter,
        plate=QRectF(
            middle - GUTTER / 2 + 1,
            top + PLATE[0] * height,
            GUTTER - 2,
            (PLATE[1] - PLATE[0]) * height,
        ),
        rings=tuple(QPointF(middle, top + share * height) for share in RINGS),
        left_text=left_text if not narrow or side == "left" else QRect(),
        right_text=right_text if not narrow or side == "right" else QRect(),
        left_foot=QRect(left_text.left(), foot_top, left_text.width(), foot),
        right_foot=QRect(right_text.left(), foot_top, right_end - right_text.left(), foot),
        tabs=QRect(
            round(right.right()) - 4,
            round(top) + 24,
            tab_width(scale) + 16,
            round(height) - 24 - fold_on - 6,
        ),
        fold_on=_corner(right.bottomRight(), fold_on, -1),
        fold_back=_corner(left.bottomLeft(), fold_back, 0),
        flip=_flip(left, right, side) if narrow else QRect(),
    )


def _text(leaf: QRectF, before: int, after: int, foot: int, scale: float) -> QRect:
    width = leaf.width() - before - after
    spare = max(0.0, width - MOST_TEXT * scale)
    x = leaf.left() + before + spare * before / (before + after)
    bottom = leaf.bottom() - max(16 + foot + 8, FOLD_ON + 2)
    top = leaf.top() + TOP_MARGIN
    return QRect(round(x), round(top), round(width - spare), round(bottom - top))


def _corner(point: QPointF, side: int, shift: int) -> QRect:
    return QRect(round(point.x()) + shift * side, round(point.y()) - side, side, side)


def _flip(left: QRectF, right: QRectF, side: str) -> QRect:
    reach = RING_REACH - GUTTER // 2 + 10
    strip = right.adjusted(reach, 0, -4, 0) if side == "left" else left.adjusted(4, 0, -reach, 0)
    height = min(260.0, strip.height() * 0.5)
    middle = strip.center().y() - strip.height() * 0.02
    return QRectF(strip.left(), middle - height / 2, strip.width(), height).toRect()
