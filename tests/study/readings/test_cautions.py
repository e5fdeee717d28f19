"""Which readings carry a caution. The areas and duties are common practice among readers."""

import pytest

from binder.study.readings.cautions import (
    AREAS,
    CONSENT,
    areas,
    caution,
    for_another,
    gravest,
    initials,
)


@pytest.mark.parametrize(
    ("topic", "question", "names"),
    [
        ("health", "", ["health"]),
        ("", "What about the diagnosis?", ["health"]),
        ("", "Should I stop my tablets?", ["health"]),
        ("", "Can they sue me for that?", ["law"]),
        ("", "Is it wise to borrow from Corin?", ["money"]),
        ("Law", "", ["law"]),
        ("", "What do I need to hear about the lease?", ["law"]),
        ("MONEY", "", ["money"]),
        ("", "Can I afford an apprentice?", ["money"]),
        ("family", "Is she in danger, and should we go to court?", ["danger", "law"]),
        ("", "Will my child settle at the new school?", ["under age", "other people"]),
        ("", "What does the boy, aged 9, need from me?", ["under age"]),
        ("", "How do I talk with a 16-year-old?", ["under age"]),
        ("health", "Is my 15 year old ill?", ["health", "under age"]),
        ("", "What will the bridge, 80 years old, stand?", []),
        ("", "What did I know at the age of 40?", []),
        ("", "What am I missing?", []),
        ("", "Why so many court cards this week?", []),
        ("workshop", "Should I move the workshop to the ferry quay?", []),
        ("", "Will Pruett mend the roof or only patch it?", []),
        ("", "What is the still water of illusion?", []),
    ],
)
def test_words_of_topic_and_question_tell_the_area(topic, question, names):
    assert [area.name for area in areas(topic, question)] == names


def test_only_the_gravest_area_speaks():
    assert caution("money", "Is he in danger?") == AREAS[1].sentence


@pytest.mark.parametrize("area", AREAS)
def test_what_is_urgent_comes_first_and_no_number_is_made_up(area):
    assert area.urgent == (area in AREAS[:2])
    assert not any(letter.isdigit() for letter in area.sentence)


@pytest.mark.parametrize(
    "question",
    [
        "I want to die",
        "i dont want to be here any more",
        "Would anybody miss me if I was gone?",
        "He hit me last night",
        "I’m scared of him",
        "Dad hits Mum when he drinks",
        "my ex keeps turning up at my door",
        "she tried to kill hersefl, sucide again",
    ],
)
def test_danger_is_urgent_however_it_is_put(question):
    area = gravest("", question)
    assert area
    assert area.urgent


@pytest.mark.parametrize(
    "question",
    [
        "Does the law of averages hold for the shuffle?",
        "How goes the operation of the kiln?",
        "When is Doctor Who on?",
        "What is this deadline but a thing that is killing me?",
        "Shall I shoot the bowls or the mugs first?",
        "What does Death ask of me, reversed?",
        "The Moon in Cancer: what now?",
        "Do I beat the eggs by hand?",
    ],
)
def test_figures_of_speech_cards_and_trades_carry_nothing(question):
    assert caution("", question) == ""


def test_a_harmless_phrase_hides_no_grave_one_beside_it():
    assert gravest("", "The law of averages says so, but should I divorce him?").name == "law"
    assert gravest("", "I am dying to know: does he beat her?").name == "danger"


def test_very_long_questions_are_weighed_by_their_beginning():
    assert gravest("", "he hit me " + "and so on " * 5000).urgent


@pytest.mark.parametrize("querent", ["", "self", " Me ", "I"])
def test_a_reading_for_oneself_asks_for_no_consent(querent):
    assert not for_another(querent)
    assert caution("week", "", querent) == ""


def test_a_reading_for_another_reminds_of_consent_and_local_law():
    assert caution("week", "", "M.") == CONSENT
    assert "consent" in CONSENT
    assert "local law" in CONSENT
    assert "about them" in CONSENT
    assert caution("health", "", "M.").endswith(CONSENT)


@pytest.mark.parametrize(
    ("name", "defers_to"),
    [
        ("self-harm", "the emergency number where you are"),
        ("self-harm", "someone you trust"),
        ("self-harm", "a crisis line where you live"),
        ("danger", "the emergency number where you are"),
        ("danger", "someone you trust"),
        ("under age", "guardians decide"),
        ("under age", "local law"),
        ("health", "licensed practitioner"),
        ("law", "licensed"),
        ("law", "local law"),
        ("money", "licensed adviser"),
        ("other people", "only they can tell"),
    ],
)
def test_each_caution_defers_to_those_licensed_or_trained(name, defers_to):
    sentence = next(area.sentence for area in AREAS if area.name == name)
    assert defers_to in sentence
    assert len(sentence) < (200 if name in ("self-harm", "danger") else 120)


@pytest.mark.parametrize(
    ("name", "short"),
    [
        ("Ada Quillfeather", "A. Q."),
        ("Ada van der Quill", "A. V. D. Q."),
        ("A. Q.", "A. Q."),
        ("AQ", "AQ"),
        ("Ada", "Ada"),
        ("  ", ""),
    ],
)
def test_a_name_in_initials(name, short):
    assert initials(name) == short
