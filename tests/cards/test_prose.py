"""Card names in running text: what counts as a name, what the student may say about it."""

import pytest

from binder.cards.facts import CARDS
from binder.cards.prose import LEFT_ALONE, Lexicon, find
from binder.cards.titles import STANDARD, TRADITIONS, DeckTitles
from tests.cards.prose_corpus import read_leaf

PLAIN = Lexicon()
MARSH = DeckTitles(
    name="Marsh deck",
    suits=("Staves", "Cups", "Swords", "Coins"),
    own=(("swords-10", "Low Water"),),
    extras=(("extra-01", "The Heron"),),
)


def said(text, lexicon=PLAIN):
    """What was found: the words themselves and the card's key."""
    return [(text[each.start : each.end], each.key) for each in find(text, lexicon)]


def words(text, lexicon=PLAIN):
    return [name for name, _ in said(text, lexicon)]


@pytest.mark.parametrize("card", CARDS, ids=lambda card: card.key)
def test_every_title_is_found_in_the_middle_of_a_sentence(card):
    assert said(f"In the end I laid {card.title} by the lamp.") == [(card.title, card.key)]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Three of Wands, strength, Page of Cups.", ["Three of Wands", "strength", "Page of Cups"]),
        ("I laid temperance, and went.", []),
        ("The kiln.\n\nToday I drew strength.", ["strength"]),
        ("The kiln.\n\nToday I drew\n\nstrength.", []),
        ("Laid: strength, the Star, the Moon.", ["strength", "the Star", "the Moon"]),
        ("So I had my strength,\nthe Star, the Moon.", ["the Star", "the Moon"]),
        ("The Star, death of a king, the Moon.", ["The Star", "the Moon"]),
    ],
)
def test_small_letters_name_a_card_in_a_list_of_cards_only(text, found):
    assert words(text) == found


@pytest.mark.parametrize("deck", TRADITIONS, ids=lambda deck: deck.name)
def test_every_title_of_a_registered_deck_is_found(deck):
    lexicon = Lexicon((deck,))
    for key in deck.keys:
        title = deck.title(key)
        assert said(f"In the end I laid {title} by the lamp.", lexicon) == [(title, key)]


@pytest.mark.parametrize("card", CARDS[22:], ids=lambda card: card.key)
def test_minors_in_small_letters_are_found(card):
    name = card.title.lower()
    assert said(f"and the {name} fell out") == [(name, card.key)]


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("3w again, as on Tuesday", ["3w"]),
        ("It was kn of cups again.", ["kn of cups"]),
        ("I drew XVII and could not sleep.", ["XVII"]),
        ("Then 10 sw r.", ["10 sw"]),
        ("3w, hermit r, qc", ["3w", "hermit", "qc"]),
        ("3 of wands", ["3 of wands"]),
        ("10s r, 5p, as", ["10s", "5p", "as"]),
        ("I The Magician", ["I", "The Magician"]),
    ],
)
def test_shorthand_as_the_trade_writes_it(text, names):
    assert words(text) == names


MARKED = """
the world is round and justice was done
a strength of hers, and the sun came out
a ‹death in the family›, the moon was full, lovers, in the star chart
‹Justice› was done. ‹Death› came early. ‹Strength› returned.
‹I› went by the van marked ‹V›, not ‹X›.
Read chapter ‹XVII›, part ‹II› and volume ‹III›; Aldred ‹IV› was king.
The King of Orrin, two of us, 3 weeks, 10 s, ‹3w› ago.
Ten of the cups were chipped.
‹Tower› Bank Road, ‹Sun› Street, ‹Moon› Lane, ‹Death› Gully, ‹World› War, the Evening ‹Star›
On ‹Sun› 3 May the ferry was late.
She is called ‹Justice›. They call her ‹Temperance›. Ask Mrs ‹Temperance› Pell.
⟦The Star|major-17⟧ is the card I want; ⟦the Star|major-17⟧, not ‹a star›.
I drew ⟦the Sun|major-19⟧, ⟦Moon|major-18⟧ and ⟦Star|major-17⟧ in that order.
⟦Temperance|major-14⟧ reversed. ⟦Judgement|major-20⟧, reversed, and ⟦Strength|major-08⟧ upright.
⟦Death|major-13⟧ crosses it. ⟦Justice|major-11⟧ in place 4. ⟦Strength|major-08⟧ again.
⟦the tower|major-16⟧ card came again. Is that ⟦the devil|major-15⟧ reversed?
He reversed the van into ‹the chariot›.
‹The sun› reversed its good opinion.
Filled ‹a page of cups› in the sketchbook; drew the ⟦page of cups|cups-11⟧ at night.
⟦The Star|major-17⟧'s jugs, ⟦the Empress|major-03⟧'s crown, ‹Devil's› Spoon
The planets: ‹the Moon› in Cancer, ‹the Sun› trine Mars, the full ‹Moon›.
⟦the Moon|major-18⟧ in place 3 is the card.
Talk of ⟦Death|major-13⟧ made her pale. Angel of ‹Death›. Court of ‹Justice›.
⟦Ten of Cups|cups-10⟧/⟦the Star|major-17⟧ as a pair; **⟦the Moon|major-18⟧**, _⟦the Sun|major-19⟧_
⟦Queen of Swords|swords-13⟧ (⟦XVII|major-17⟧, ⟦3c|cups-03⟧).
We did ⟦Justice|major-11⟧ on Friday and ⟦Temperance|major-14⟧ on Monday.
My card for the month is ⟦Temperance|major-14⟧. Card of the day: ⟦Strength|major-08⟧
A ‹5p› piece, ‹10s› of people, ‹2c› each, ‹4s› 6d, 2 kw, ‹3/4 of cups›.
See ‹death›.txt, photos/‹star›.png, ‹sun›@pellmouth.example, a ‹tower›-like thing, the ‹starfish›
‹moon›light, ‹tower›ing, ‹fool›ish
"""


@pytest.mark.parametrize("line", MARKED.strip().splitlines())
def test_what_is_meant_as_a_card_and_what_is_not(line):
    leaf = read_leaf(line)
    assert [tuple(each) for each in find(leaf.text, PLAIN)] == leaf.mentions


@pytest.mark.parametrize(
    "text",
    [
        "`the Star`",
        "```\nthe Star\nThree of Wands\n```",
        "~~~\nthe Star",
        "[the Star](card:major-17)",
        "![the Star](file:0190)",
        "[the Star][note]",
        "[star]: leaf:0190 the Star",
        "<b title='the Star'>",
        "https://pellmouth.example/The-Star?q=the+Star",
        "<https://pellmouth.example/The_Star>",
    ],
)
def test_code_links_and_addresses_are_passed_over(text):
    assert words(f"{text}\n\nbut the Moon is here") == ["the Moon"] or text.startswith("~~~")
    assert "the Star" not in words(text)


def test_words_after_a_fence_and_an_open_backtick_are_read():
    assert words("```\nx\n```\nthe Star") == ["the Star"]
    assert words("a stray ` and the Star") == ["the Star"]


def test_a_name_may_run_over_a_line_end_but_not_over_a_paragraph():
    assert words("I saw the\nHanged Man and Three of\nWands") == [
        "the\nHanged Man",
        "Three of\nWands",
    ]
    assert words("I saw three of\n\nWands are fire") == []


def test_the_article_belongs_to_the_name_where_the_title_has_one():
    assert words("drew the Star and the Three of Wands and the Death card") == [
        "the Star",
        "Three of Wands",
        "Death",
    ]


def test_another_decks_titles_are_names_only_when_it_is_registered():
    text = "I laid the Ace of Coins, Low Water and the Heron, then Ten of Swords."
    assert words(text) == ["Ten of Swords"]
    assert said(text, Lexicon((STANDARD, MARSH))) == [
        ("Ace of Coins", "pentacles-01"),
        ("Low Water", "swords-10"),
        ("the Heron", "extra-01"),
        ("Ten of Swords", "swords-10"),
    ]


def test_the_first_deck_says_what_a_number_means():
    older = DeckTitles(eleven_is="strength")
    assert said("So XI fell.", Lexicon((STANDARD, older))) == [("XI", "major-11")]
    assert said("So XI fell.", Lexicon((older, STANDARD))) == [("XI", "major-08")]


def test_a_banned_word_is_never_linked():
    text = "the Sun, then Sun reversed, then the Moon"
    assert words(text, Lexicon(banned=frozenset({"sun"}))) == ["the Moon"]
    assert words(text, Lexicon(banned=frozenset({"the sun"}))) == ["Sun", "the Moon"]


def test_a_chosen_word_is_always_linked_outside_code_and_links():
    text = "under the star we slept; `the star`; a star fell; star charts"
    assert words(text) == []
    assert words(text, Lexicon(chosen=frozenset({"the star"}))) == ["the star"]
    assert words(text, Lexicon(chosen=frozenset({"star"}))) == ["the star", "star", "star"]


def test_a_ban_outdoes_a_choice():
    lexicon = Lexicon(banned=frozenset({"star"}), chosen=frozenset({"star"}))
    assert words("the Star", lexicon) == []


def test_one_name_can_be_left_alone():
    assert words(f"the Star and {LEFT_ALONE}the Star") == ["the Star"]


def test_odd_letters_keep_every_place_in_step():
    text = "İİ ﬁne ß; drew The Star’s jugs and the Tower"
    assert words(text) == ["The Star", "the Tower"]


def test_no_decks_no_names():
    assert words("the Star and XVII and 3w", Lexicon(())) == []


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Then 10w came again today.", ["10w"]),
        ("The knw came again today.", ["knw"]),
        ("A low tide, wow. So we row.", []),
    ],
)
def test_codes_of_wands_are_hardly_ever_anything_else(text, found):
    assert words(text) == found


def test_a_first_word_is_a_card_where_the_leaf_names_that_card_surely():
    """'Justice’s sword' may be anyone's; where the card Justice is spoken of it is the card's."""
    far = "we spoke of the kiln and of the weather, and of nothing that matters, for an hour. " * 4
    own = f"Then {far}Justice’s sword hung there. {far.capitalize()}"
    assert words(own) == []
    assert words(f"I laid the Moon. {own}") == ["the Moon"]
    assert len(words(f"I laid the Justice card. {own}")) == 2
