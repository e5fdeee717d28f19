"""A made-up tab to print: the readings of a potter who may move her workshop."""

from typing import Any

from binder.paper.data import (
    Part,
    PlacedCard,
    PrintExpectation,
    PrintLeaf,
    PrintLookBack,
    Section,
    SideBySide,
    TurnedUp,
)

SUITS = ("#A04A22", "#2C6278", "#565B7A", "#5A692F", "#5A3860")


def words(text: str) -> dict[str, Any]:
    """A piece of plain text."""
    return {"t": "text", "s": text}


def p(*pieces: str | dict[str, Any]) -> dict[str, Any]:
    """A paragraph of texts and other inlines."""
    return {"t": "p", "c": [words(it) if isinstance(it, str) else it for it in pieces]}


def one_face(x: float, y: float, colour: str, title: str, turn: int = 0) -> str:
    """A plain card for a drawing, its top left corner at x, y."""
    return (
        f'<g transform="translate({x} {y}) rotate({turn} 50 84)">'
        '<rect width="100" height="168" rx="6" fill="#FDFAF2" stroke="#3A362F" stroke-width="2"/>'
        f'<rect x="12" y="26" width="76" height="112" fill="{colour}"/>'
        '<text x="50" y="157" text-anchor="middle" font-family="Vollkorn" font-size="13" '
        f'fill="#23211D">{title}</text></g>'
    )


def face() -> str:
    """One card."""
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="-1 -1 102 170">'
        + one_face(0, 0, SUITS[4], "The Star")
        + "</svg>"
    )


def cross() -> str:
    """A cross of five cards, the second lying across the first."""
    places = ((150, 180, 0), (150, 180, 90), (150, 380, 180), (0, 180, 0), (300, 180, 0))
    names = ("Pentacles", "Wands", "Pentacles", "Swords", "The Star")
    drawn = "".join(
        one_face(x, y, colour, name, turn)
        for (x, y, turn), name, colour in zip(places, names, SUITS, strict=True)
    )
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="-5 140 410 420">{drawn}</svg>'


def reading(
    uid: str = "r1", title: str = "Should I move the workshop to the ferry quay?"
) -> PrintLeaf:
    """A reading with everything a reading can have."""
    return PrintLeaf(
        uid=uid,
        kind="reading",
        title=title,
        over="Sunday 22 November 2026, after supper",
        under="Five-card cross, Lantern Road deck",
        day="22 Nov",
        svg=cross(),
        placed=(
            PlacedCard(1, "The matter", "Three of Pentacles"),
            PlacedCard(2, "Crosses it", "Five of Wands"),
            PlacedCard(3, "Ground", "Four of Pentacles", reversed=True, note="held too tight"),
            PlacedCard(4, "Behind", "Six of Swords"),
            PlacedCard(5, "Ahead", "The Star", key="major-17"),
        ),
        parts=(
            Part(
                "Impressions",
                [
                    p(
                        "Work made in company, and five staves crossing it: too many hands on one "
                        "bench. The purse held upside down is the deposit I don’t want to pay. "
                        "Someone has already made this crossing. The Star is open water."
                    )
                ],
                own=True,
            ),
        ),
        expectations=(
            PrintExpectation(
                "The quay landlord asks for more than two months’ deposit.", 70, "20 Dec"
            ),
            PrintExpectation("By spring I still have the old room as well.", 55, "1 Apr", "partly"),
        ),
    )


def looked_back() -> PrintLeaf:
    """A reading that was looked back on, with a footnote and a list of things to do."""
    foot = {"t": "foot", "n": 1, "again": False, "c": [p("Kiln log, page 12.")]}
    return PrintLeaf(
        uid="r2",
        kind="reading",
        title="The glaze order",
        over="Wednesday 14 October 2026",
        under="Three cards, Lantern Road deck",
        day="14 Oct",
        parts=(
            Part(
                "Impressions",
                [
                    p("The order is late, and the ash glaze runs", foot, ". I would rather wait."),
                    {
                        "t": "ul",
                        "tight": True,
                        "items": [
                            [p({"t": "tick", "done": True}, " Write to the supplier")],
                            [
                                p(
                                    {"t": "tick", "done": False},
                                    " Fire two tests at cone six, and keep "
                                    "one of them for the shelf by the window in good light",
                                )
                            ],
                        ],
                    },
                ],
                own=True,
            ),
        ),
        look_backs=(
            PrintLookBack(
                "Looked back on 20 November 2026", [p("It came on the Friday after all.")]
            ),
        ),
    )


def card_leaf() -> PrintLeaf:
    """A card leaf with facts, own words, sources and the readings it turned up in."""
    return PrintLeaf(
        uid="c1",
        kind="card",
        title="The Star",
        over="XVII, Major Arcana",
        svg=face(),
        facts=(("Element", "Air"), ("Number", "17 (1 + 7 = 8)"), ("Sky", "Aquarius")),
        parts=(
            Part(
                "Own words",
                [
                    p(
                        "Clear weather after damage. It promises direction, not arrival: you can "
                        "see far, and you are still outdoors. Ask what I’d do if nobody watched."
                    )
                ],
                own=True,
            ),
        ),
        side_by_side=SideBySide(
            (
                ("Orla Tenpenny", "Cards at the Kitchen Table"),
                ("Bram Vesterholt", "The Long Spread"),
            ),
            (
                (
                    "Upright",
                    (
                        "Rest you have earned; help that asks for nothing back.",
                        "A fixed point to steer by. The work remains one's own.",
                    ),
                ),
                (
                    "Reversed",
                    ("Hope kept private until it spoils.", "The wrong star, followed faithfully."),
                ),
                ("They differ", ("Takes it as comfort.", "Takes it as instruction.")),
            ),
        ),
        turned_up=(
            TurnedUp("22 Nov", "Move the workshop to the quay?", "Ahead", "waiting", "waiting"),
            TurnedUp("14 Oct", "The glaze order", "The matter", "partly", "partly"),
            TurnedUp("30 Jul", "Asking Wren to teach", "Ahead", "came about", "came about"),
            TurnedUp("9 Mar", "Cutting the stall hours", "Hopes, reversed", "did not", "did not"),
        ),
        turned_up_note="7 times in 61 readings",
    )


def everything() -> PrintLeaf:
    """A plain leaf with one of every kind of block."""
    foot = {"t": "foot", "n": 1, "again": False, "c": [p("The kiln is at the back.")]}
    link = {"t": "link", "to": "https://example.org/ash", "said": False, "c": [words("ash glazes")]}
    return PrintLeaf(
        uid="p1",
        kind="plain",
        title="Notes on the methods",
        under="Written over a winter",
        parts=(
            Part(
                "",
                [
                    p(
                        "Counting starts at the ",
                        {"t": "strong", "c": [words("significator")]},
                        " and goes ",
                        {"t": "em", "c": [words("with the gaze")]},
                        foot,
                        ". Read about ",
                        link,
                        ", or see ",
                        {"t": "link", "to": "leaf:r1", "said": False, "c": [words("the workshop")]},
                        ". Again",
                        {"t": "foot", "n": 1, "again": True, "c": []},
                        ".",
                    ),
                    {"t": "h", "level": 1, "c": [words("A first heading")]},
                    {"t": "h", "level": 2, "c": [words("A second heading")]},
                    p(
                        "Plain words under it, with ",
                        {"t": "code", "s": "3w, hermit r"},
                        " as written, ",
                        {"t": "strike", "c": [words("struck out")]},
                        " and x",
                        {"t": "sup", "c": [words("2")]},
                        ".",
                    ),
                    {
                        "t": "ul",
                        "tight": True,
                        "items": [
                            [p("Wands")],
                            [
                                p("Cups"),
                                {
                                    "t": "ol",
                                    "tight": True,
                                    "start": 3,
                                    "items": [[p("three")], [p("four")]],
                                },
                            ],
                            [p("Swords")],
                        ],
                    },
                    {
                        "t": "quote",
                        "c": [
                            p(
                                "What is held is not had, says the old book, and the "
                                "reader turns the page to see whether it says anything else."
                            )
                        ],
                    },
                    {
                        "t": "table",
                        "align": ["left", "right", ""],
                        "head": [[words("Suit")], [words("Times")], [words("Element")]],
                        "rows": [
                            [[words("Wands")], [words("14")], [words("Fire")]],
                            [[words("Cups")], [words("9")], [words("Water")]],
                        ],
                    },
                    {"t": "pre", "text": "Ace  = 11\n  2  = 2, and so on"},
                    {"t": "hr"},
                    {"t": "note", "c": [words("A line the program adds.")]},
                ],
            ),
        ),
    )


def section(*leaves: PrintLeaf) -> Section:
    """A readings log with these leaves, or with one of every kind."""
    chosen = leaves or (reading(), looked_back(), card_leaf(), everything())
    return Section(
        binder="Practice",
        tab="Readings log",
        tab_place=(4, 5),
        subtitle=("61 readings, 1 December 2025", "to 25 November 2026"),
        notes=("Leaves in the drawer are not printed.", "An index of the cards is at the end."),
        order="Readings log, newest first",
        leaves=chosen,
        card_index=(("major-17", "The Star"), ("major-18", "The Moon")),
    )
