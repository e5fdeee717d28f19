"""Which readings carry a caution. The areas and duties are common practice among readers."""

import pytest

from binder.study.readings.cautions import AREAS, CONSENT, areas, caution, for_another, initials


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
        ("", "Will my child settle at the new school?", ["under age"]),
        ("", "What does the boy, aged 9, need from me?", ["under age"]),
        ("", "How do I talk with a 16-year-old?", ["under age"]),
        ("health", "Is my 15 year old ill?", ["under age", "health"]),
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
    assert caution("money", "Is he in danger?") == AREAS[0].sentence


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
        ("danger", "local emergency services"),
        ("under age", "guardians decide"),
        ("under age", "local law"),
        ("health", "licensed practitioner"),
        ("law", "licensed"),
        ("law", "local law"),
        ("money", "licensed adviser"),
    ],
)
def test_each_caution_defers_to_those_licensed_or_trained(name, defers_to):
    sentence = next(area.sentence for area in AREAS if area.name == name)
    assert defers_to in sentence
    assert len(sentence) < 120


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
