"""Nothing overlaps and nothing is cut off, in any window and at any size of the letters."""

from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QRect, QRectF, QSize

from ui.desk.frame import LEAST_TEXT, RING_REACH, frame

sizes = st.builds(QSize, st.integers(760, 2400), st.integers(560, 1400))
scales = st.floats(1, 2)
sides = st.sampled_from(["left", "right"])


def test_the_design_size_gives_the_design_geometry():
    # geometry.px of the design: cover, leaves and rings in a window of 1600 x 1000,
    # seen from the corner of the stage at (212, 48)
    made = frame(QSize(1388, 952))
    assert made.boards.toRect() == QRect(232 - 212, 62 - 48, 1352, 924)
    assert made.left.toRect() == QRect(248 - 212, 76 - 48, 628, 896)
    assert made.right.toRect() == QRect(892 - 212, 76 - 48, 628, 896)
    for ring, y in zip(made.rings, (232, 524, 816), strict=True):
        assert abs(ring.y() + 48 - y) < 1
        assert abs(ring.x() + 212 - 884) < 1
    assert made.left_text.width() == 524
    assert not made.narrow


def test_a_window_of_1100_pixels_has_room_for_one_leaf():
    made = frame(QSize(1100 - 212, 700 - 48))
    assert made.narrow
    assert made.shows("left")
    assert not made.shows("right")
    assert made.right_text.isEmpty()
    assert not made.flip.isEmpty()


@given(sizes, scales, sides)
def test_all_lies_inside_the_boards(size, scale, side):
    made = frame(size, scale, side)
    whole = QRectF(0, 0, size.width(), size.height())
    assert whole.contains(made.boards)
    for part in (made.left, made.right, made.gutter, made.plate):
        assert made.boards.contains(part)
    for part in (made.tabs, made.fold_on, made.fold_back, made.flip):
        assert part.isEmpty() or made.boards.contains(QRectF(part))


@given(sizes, scales, sides)
def test_text_keeps_clear_of_rings_corners_feet_and_edges(size, scale, side):
    made = frame(size, scale, side)
    holes = [
        QRectF(ring.x() + way * RING_REACH - 9, ring.y() - 9, 18, 18)
        for ring in made.rings
        for way in (-1, 1)
    ]
    for which in ("left", "right"):
        if not made.shows(which):
            continue
        leaf = getattr(made, which)
        text, foot = getattr(made, f"{which}_text"), getattr(made, f"{which}_foot")
        assert leaf.contains(QRectF(text))
        assert leaf.contains(QRectF(foot))
        assert text.height() > 200
        assert text.width() >= LEAST_TEXT * min(scale, 1.2) - 1 or made.narrow
        assert not text.intersects(foot)
        for corner in (made.fold_on, made.fold_back):
            assert not foot.intersects(corner)
            assert not text.intersects(corner)
        assert not any(hole.intersects(QRectF(text)) for hole in holes)
        assert not any(hole.intersects(QRectF(foot)) for hole in holes)


@given(sizes, scales, sides)
def test_the_way_to_the_other_leaf_keeps_clear_of_the_rings(size, scale, side):
    made = frame(size, scale, side)
    if made.narrow:
        assert made.flip.width() >= 24
        for ring in made.rings:
            hole = QRectF(ring.x() - RING_REACH - 9, ring.y() - 9, 2 * RING_REACH + 18, 18)
            assert not hole.intersects(QRectF(made.flip))
        assert not made.flip.intersects(made.tabs)


@given(sizes, scales)
def test_tabs_end_above_the_turned_corner(size, scale):
    made = frame(size, scale)
    assert not made.tabs.intersects(made.fold_on)
    assert made.tabs.height() > 300
