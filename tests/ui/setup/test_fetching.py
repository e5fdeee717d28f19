"""What pip reports becomes one sentence."""

from pathlib import Path

import pytest

from ui.setup.fetching import reason, tell

# Lines as pip 23 to 25 prints them, seen by provoking each failure.
UNREACHED = """\
WARNING: Retrying (Retry(total=1, connect=None)) after connection broken by 'NewConnectionError(
'<pip._vendor.urllib3.connection.HTTPSConnection object>: Failed to establish a new connection:
[Errno -3] Temporary failure in name resolution')': /simple/peewee/
ERROR: Could not find a version that satisfies the requirement peewee==4.5.3 (from versions: none)
ERROR: No matching distribution found for peewee==4.5.3
"""
UNMADE = """\
ERROR: Could not find a version that satisfies the requirement typst==0.15.2 (from versions: none)
ERROR: No matching distribution found for typst==0.15.2
"""
CHANGED = "ERROR: THESE PACKAGES DO NOT MATCH THE HASHES FROM THE REQUIREMENTS FILE."
FULL = "ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device"


@pytest.mark.parametrize(
    ("report", "words"),
    [
        (UNREACHED, "reaches the internet"),
        (UNMADE, "not made for this system"),
        (CHANGED, "damaged or changed"),
        (FULL, "disk is full"),
        ("ERROR: something new", "what pip reported is in setup.log"),
    ],
)
def test_a_failure_is_one_sentence(report, words):
    sentence = reason(report, Path("setup.log"))
    assert words in sentence
    assert sentence.endswith(".")
    assert "\n" not in sentence


def test_somebody_waiting_hears_of_each_package(capsys):
    tell("Collecting peewee==4.5.3 (from -r requirements.lock (line 7))\n")
    tell("  Downloading peewee-4.5.3-py3-none-any.whl (150 kB)\n")
    tell("Installing collected packages: peewee\n")
    assert capsys.readouterr().out == "  fetching peewee 4.5.3\n  installing them\n"
