"""The owner's photographs of cards: read safely, kept, and shown in the stead of drawn faces."""

from datetime import date

import pytest
from PIL import Image, ImageDraw
from PySide6.QtGui import QColor, QImage, QPixmapCache

from binder.cards.facts import CARDS, card
from binder.errors import CanMend
from binder.store.clock import OtherDay
from binder.study.decks import decks
from binder.study.decks.deck_faces import set_faces
from binder.study.leaves import files
from tests.ui.laying.conftest import desk  # noqa: F401
from tests.ui.leaf_fixtures import log, shown
from ui.kit.faces.faces import FaceCache
from ui.leaves.card.card import CardPage
from ui.leaves.reading.reading import ReadingPage
from ui.session.photos import WIDEST, card_photo, folder_pictures, read_photo
from ui.session.session import Session

BLUE = (20, 60, 200)


def picture(path, size=(300, 504), colour=BLUE, turn=0):
    """A plain picture with a red top, its EXIF saying how it was turned."""
    image = Image.new("RGB", size, colour)
    ImageDraw.Draw(image).rectangle((0, 0, size[0], size[1] // 10), fill="red")
    exif = image.getexif()
    if turn:
        exif[0x0112] = turn
    image.save(path, exif=exif)
    return path


@pytest.fixture
def deck(course_shelf, tmp_path):
    """A deck with a photograph of the Star: shelf, and uid of the deck."""
    QPixmapCache.clear()
    binder = course_shelf.binder("Practice")
    data = card_photo(picture(tmp_path / "star.png"))
    uid = files.keep_bytes(binder, "star.jpg", "image/jpeg", data)
    set_faces(course_shelf, binder, "deck", {"major-17": uid})
    return course_shelf, "deck"


def middle(pixmap):
    image = pixmap.toImage()
    return image.pixelColor(image.width() // 2, image.height() // 2)


def near(colour, other):
    pairs = zip(colour.getRgb()[:3], other, strict=True)
    return all(abs(a - b) < 24 for a, b in pairs)


def test_a_photograph_is_shown_for_its_card_and_deck_only(deck, look):
    shelf, uid = deck
    faces = FaceCache(Session(shelf, OtherDay(date(2026, 11, 25))).photos)
    star, moon = card("major-17"), card("major-18")
    assert near(middle(faces.of(uid).face(star, 100, look.theme)), BLUE)
    for other in (faces.of(uid).face(moon, 100, look.theme), faces.face(star, 100, look.theme)):
        assert not near(middle(other), BLUE)


def test_a_reversed_photograph_stands_on_its_head(deck, look):
    shelf, uid = deck
    faces = FaceCache(Session(shelf, OtherDay(date(2026, 11, 25))).photos, uid)
    up = faces.face(card("major-17"), 100, look.theme).toImage()
    down = faces.face(card("major-17"), 100, look.theme, turn=180).toImage()
    assert near(up.pixelColor(50, 6), (255, 0, 0))
    assert near(down.pixelColor(50, 161), (255, 0, 0))
    assert up.pixelColor(0, 0).alpha() == 0


def test_a_photograph_whose_file_is_gone_gives_the_drawn_face(course_shelf, look):
    QPixmapCache.clear()
    set_faces(course_shelf, course_shelf.binder("Practice"), "deck", {"major-17": "gone"})
    faces = FaceCache(Session(course_shelf, OtherDay(date(2026, 11, 25))).photos)
    star = card("major-17")
    drawn = faces.face(star, 100, look.theme).toImage()
    assert faces.of("deck").face(star, 100, look.theme).toImage() == drawn


def test_a_new_photograph_is_seen_at_once(deck, look, tmp_path):
    shelf, uid = deck
    session = Session(shelf, OtherDay(date(2026, 11, 25)))
    faces = FaceCache(session.photos, uid)
    faces.face(card("major-17"), 100, look.theme)
    binder = shelf.binder("Practice")
    data = card_photo(picture(tmp_path / "green.png", colour=(10, 160, 40)))
    new = files.keep_bytes(binder, "green.jpg", "image/jpeg", data)
    set_faces(shelf, binder, uid, {"major-17": new})
    assert near(middle(faces.face(card("major-17"), 100, look.theme)), (10, 160, 40))


def test_a_reading_shows_the_photographs_of_its_deck(qtbot, look, deck):
    shelf, uid = deck
    _, leaf = log(shelf, key="one-card", line="star", deck=uid, deck_name="Saltings")
    session = Session(shelf, OtherDay(date(2026, 11, 25)))
    page = shown(ReadingPage(session, look), qtbot, session, leaf)
    rect = page.cards.place_rect(1).center().toPoint()
    assert near(page.cards.grab().toImage().pixelColor(rect), BLUE)


@pytest.mark.parametrize(
    ("size", "turn", "upright"),
    [((300, 504), 0, (300, 504)), ((504, 300), 6, (300, 504)), ((3000, 5040), 0, (WIDEST, 1075))],
)
def test_photographs_are_kept_upright_and_no_larger_than_shown(tmp_path, qapp, size, turn, upright):
    path = picture(tmp_path / "x.jpg", size=size, turn=turn)
    image = QImage.fromData(card_photo(path), "JPEG")
    assert (image.width(), image.height()) == upright


def test_what_was_clear_is_white(tmp_path, qapp):
    Image.new("RGBA", (30, 50), (0, 0, 0, 0)).save(tmp_path / "clear.png")
    image = QImage.fromData(card_photo(tmp_path / "clear.png"))
    assert image.pixelColor(5, 5) == QColor("white")


def test_a_file_that_is_no_picture_is_said(tmp_path, qapp):
    (tmp_path / "x.jpg").write_text("Dear diary")
    with pytest.raises(CanMend, match=r"“x\.jpg” is no picture"):
        read_photo(tmp_path / "x.jpg", 640)
    cut = picture(tmp_path / "cut.png").read_bytes()[:60]
    (tmp_path / "cut.png").write_bytes(cut)
    with pytest.raises(CanMend, match="is damaged, or too large"):
        read_photo(tmp_path / "cut.png", 640)
    with pytest.raises(CanMend, match="could not be read"):
        read_photo(tmp_path / "gone.png", 640)


def test_two_hundred_megapixels_are_refused_before_they_are_read(tmp_path, qapp):
    Image.new("1", (20_000, 10_001)).save(tmp_path / "huge.png")
    with pytest.raises(CanMend, match="more than 200 million pixels"):
        read_photo(tmp_path / "huge.png", 640)


def test_pictures_of_a_folder(tmp_path, qapp):
    for name in ("b.JPG", "a.png"):
        picture(tmp_path / name)
    (tmp_path / "notes.txt").write_text("x")
    (tmp_path / "within.png").mkdir()
    assert folder_pictures(tmp_path) == ["a.png", "b.JPG"]
    with pytest.raises(CanMend, match="could not be read"):
        folder_pictures(tmp_path / "gone")


def test_a_card_leaf_shows_the_photograph_of_the_usual_deck(qtbot, look, course_shelf, tmp_path):
    QPixmapCache.clear()
    binder = course_shelf.binder("Practice")
    uid = decks.add_deck(course_shelf, binder, "Saltings deck")
    session = Session(course_shelf, OtherDay(date(2026, 11, 25)))
    leaf = course_shelf.card_leaf("major-17")[1]
    page = shown(CardPage(session, look), qtbot, session, leaf)

    def colour():
        image = page.top.faces.faces[0].grab().toImage()
        return image.pixelColor(image.width() // 2, image.height() // 2)

    assert not near(colour(), BLUE)
    file = files.keep_bytes(
        binder, "star.jpg", "image/jpeg", card_photo(picture(tmp_path / "star.png"))
    )
    set_faces(course_shelf, binder, uid, {"major-17": file})
    assert near(colour(), BLUE)


@pytest.fixture
def grid(desk, tmp_path, qtbot):  # noqa: F811
    """A new reading with a deck all of whose cards have a photograph, the grid of faces shown."""
    QPixmapCache.clear()
    shelf = desk.session.shelf
    uid = decks.decks(shelf)[0].uid
    data = card_photo(picture(tmp_path / "any.png", size=(640, 1075)))
    kept = files.keep_bytes(desk.binder, "any.jpg", "image/jpeg", data)
    set_faces(shelf, desk.binder, uid, {one.key: kept for one in CARDS})
    desk.entry.begin(desk.binder, desk.tab)
    desk.pick_faces()
    return desk


def test_the_grid_and_the_layout_of_a_new_reading_show_the_photographs(grid, qtbot):
    shown = grid.entry.left.grid

    def blue(widget, at):
        return near(widget.grab().toImage().pixelColor(at), BLUE)

    qtbot.waitUntil(lambda: all(blue(shown, grid.face(k)) for k in ("major-00", "pentacles-14")))
    grid.click_face("major-17")
    assert blue(grid.entry.right.view, grid.place(1))
    grid.head.deck.setCurrentIndex(1)
    grid.head.deck.activated.emit(1)
    assert not blue(shown, grid.face("major-00"))
    assert not blue(grid.entry.right.view, grid.place(1))


def test_photographs_come_into_the_grid_without_holding_a_frame_up(grid, qtbot):
    """However slow the machine: no more than a share of the cards is made in one go."""
    shown = grid.entry.left.grid
    rounds = []
    shown.photos.ready.connect(lambda: rounds.append(shown.photos.waiting))
    QPixmapCache.clear()
    shown.grab()
    qtbot.waitUntil(lambda: bool(rounds) and rounds[-1] == 0)
    assert max(rounds) > 0
    assert len(rounds) > 1


def test_a_card_without_a_photograph_is_drawn_among_the_others(grid, qtbot):
    shelf, uid = grid.session.shelf, decks.decks(grid.session.shelf)[0].uid
    set_faces(shelf, grid.binder, uid, {"cups-01": "gone"})
    QPixmapCache.clear()
    shown = grid.entry.left.grid
    shown.grab()
    qtbot.waitUntil(lambda: not shown.photos.waiting)
    image = shown.grab().toImage()
    assert not near(image.pixelColor(grid.face("cups-01")), BLUE)
    assert near(image.pixelColor(grid.face("cups-02")), BLUE)
