"""The two themes, day and lamp: colours, letters, sizes, and the dress of standard controls.

Widgets are handed a `Look`, draw with its `theme` and repaint when it says `changed`.
"""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QColor, QFont, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication

from binder.resources import resource
from ui.look import fonts
from ui.look.colour import apart, mix
from ui.look.style_sheet import style_sheet

NAMES = ("day", "lamp")
SCALES = (1.0, 2.0)
"""Smallest and largest scale of the text."""

TEXT_CONTRAST = 7.0
SHAPE_CONTRAST = 3.0

_WEIGHTS = {
    "card_leaf_title": 600,
    "leaf_title": 600,
    "section_title": 600,
    "spine": 600,
    "section_label": 600,
    "bar_and_tabs": 500,
}


@lru_cache(maxsize=1)
def palette() -> Mapping[str, Mapping[str, Mapping[str, float]]]:
    """The palette file as read: `day`, `lamp`, `type`, `geometry` and so on."""
    return tomllib.loads(resource("palette.toml").read_text(encoding="utf-8"))


@lru_cache(maxsize=1)
def type_sizes() -> dict[str, float]:
    """Pixel size of each role at scale 1; 'caption' stands for 'caption_and_axis' too."""
    sizes = dict(palette()["type"]["px"])
    return sizes | {"caption": sizes["caption_and_axis"]}


@dataclass(frozen=True, eq=False)
class Theme:
    """Colours by their palette keys, and a scale of the text from 1 to 2."""

    name: str
    colours: Mapping[str, QColor]
    scale: float = 1.0
    _fonts: dict[tuple[str, int | None, bool], QFont] = field(default_factory=dict, repr=False)

    def __getitem__(self, key: str) -> QColor:
        """Colour of a palette key, or of a derived one: 'line', the edge of a control."""
        return self.colours[key]

    @property
    def lamp(self) -> bool:
        """Whether this is the dark theme."""
        return self.name == "lamp"

    def hexes(self) -> dict[str, str]:
        """Colours as '#rrggbb', for drawings in SVG."""
        return {key: colour.name() for key, colour in self.colours.items()}

    def px(self, size: float) -> int:
        """A length that grows with the text, in whole pixels."""
        return round(size * self.scale)

    def font(self, role: str, weight: int | None = None, italic: bool = False) -> QFont:
        """The letters of a role of the palette's [type.px]; KeyError for an unknown role."""
        asked = (role, weight, italic)
        if asked not in self._fonts:
            font = base_font(type_sizes()[role] * self.scale)
            font.setWeight(QFont.Weight(weight or _WEIGHTS.get(role, 400)))
            font.setItalic(italic)
            self._fonts[asked] = font
        return QFont(self._fonts[asked])

    def line(self, role: str) -> float:
        """Height of a line of text of a role, in pixels."""
        heights = palette()["type"]["line_height_px"]
        return heights.get(role, type_sizes()[role] * 1.4) * self.scale

    def tab_fill(self, colour: str) -> QColor:
        """A colour key or '#rrggbb' as the fill of a tab that carries words in ink."""
        fill = self._own(colour, 0.24, 0.6)
        away = QColor("black" if self.lamp else "white")
        return apart(fill, away, [self["ink"]], TEXT_CONTRAST)

    def spine_fill(self, colour: str) -> QColor:
        """A colour key or '#rrggbb' as the colour of a spine or of a binder's boards."""
        return self._own(colour, 0.2, 0.8)

    def _own(self, colour: str, lightness: float, saturation: float) -> QColor:
        if colour in self.colours:
            return self.colours[colour]
        fill = QColor(colour) if QColor.isValidColorName(colour) else QColor(self["cover"])
        if self.lamp and fill.lightnessF() > lightness:
            fill = QColor.fromHslF(
                max(fill.hslHueF(), 0), fill.hslSaturationF() * saturation, lightness
            )
        return fill


def base_font(pixels: float) -> QFont:
    """Regular letters of a size in pixels, with lining figures and unhinted shapes."""
    font = QFont(fonts.FAMILY)
    screen = QGuiApplication.primaryScreen()
    font.setPointSizeF(pixels * 72 / (screen.logicalDotsPerInchY() if screen else 96))
    font.setFeature(QFont.Tag("lnum"), 1)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return font


def load(name: str, scale: float = 1.0) -> Theme:
    """The theme of a name, its text scaled; unknown names give 'day', scales are bounded."""
    name = name if name in NAMES else NAMES[0]
    colours = {key: QColor(value) for key, value in palette()[name]["colours"].items()}
    grounds = [colours["bar"], colours["slip"], colours["paper"]]
    start = mix(colours["bar"], colours["inksoft"], 0.3)
    colours["line"] = apart(start, colours["inksoft"], grounds, SHAPE_CONTRAST + 0.1)
    return Theme(name, colours, min(max(scale, SCALES[0]), SCALES[1]))


class Look(QObject):
    """The theme in use; says `changed` when another name or scale is chosen."""

    changed = Signal()

    def __init__(self, theme: Theme | None = None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._theme = theme or load(NAMES[0])

    @property
    def theme(self) -> Theme:
        """The theme to draw with now."""
        return self._theme

    def set_name(self, name: str) -> None:
        """Change to 'day' or 'lamp'."""
        self._set(load(name, self._theme.scale))

    def set_scale(self, scale: float) -> None:
        """Change the scale of the text, 1 to 2."""
        self._set(load(self._theme.name, scale))

    def _set(self, theme: Theme) -> None:
        self._theme = theme
        app = QApplication.instance()
        if isinstance(app, QApplication):
            apply(app, theme)
        self.changed.emit()


def apply(app: QApplication, theme: Theme) -> None:
    """Dress the application: letters, palette, and a small style sheet for standard controls."""
    fonts.load()
    if app.style().objectName() != "fusion" and not app.styleSheet():
        app.setStyle("Fusion")
    app.setFont(theme.font("list"))
    app.setPalette(_qt_palette(theme))
    icons = resource("icons").as_posix()
    app.setStyleSheet(style_sheet(theme.name, theme.hexes(), theme.scale, icons))


def _qt_palette(theme: Theme) -> QPalette:
    role = QPalette.ColorRole
    colours = {
        role.Window: "paper",
        role.WindowText: "ink",
        role.Base: "slip",
        role.AlternateBase: "faint",
        role.Text: "ink",
        role.Button: "slip",
        role.ButtonText: "ink",
        role.BrightText: "red",
        role.ToolTipBase: "slip",
        role.ToolTipText: "ink",
        role.PlaceholderText: "inksoft",
        role.Highlight: "own",
        role.HighlightedText: "paper",
        role.Link: "own",
        role.LinkVisited: "own",
        role.Accent: "own",
        role.Light: "slip",
        role.Midlight: "paper",
        role.Mid: "rule",
        role.Dark: "line",
        role.Shadow: "ringlo",
    }
    made = QPalette()
    for name, key in colours.items():
        made.setColor(name, theme[key])
    dim = mix(theme["paper"], theme["inksoft"], 0.6)
    for name in (role.WindowText, role.Text, role.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, name, dim)
    return made
