"""The first shape of a binder file, in plain SQL so that no later model can change it."""

TABLES = """
CREATE TABLE info (key TEXT PRIMARY KEY NOT NULL, value TEXT NOT NULL);
CREATE TABLE tab (id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, name TEXT NOT NULL, kind TEXT NOT NULL, colour TEXT NOT NULL,
  place REAL NOT NULL, aside TEXT);
CREATE TABLE leaf (id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, tab_id INTEGER NOT NULL REFERENCES tab(id), kind TEXT NOT NULL,
  title TEXT NOT NULL, text TEXT NOT NULL DEFAULT '', also TEXT NOT NULL DEFAULT '',
  place REAL NOT NULL, day TEXT NOT NULL DEFAULT '', card TEXT NOT NULL DEFAULT '', aside TEXT);
CREATE INDEX leaf_tab_place ON leaf (tab_id, place) WHERE aside IS NULL;
CREATE INDEX leaf_tab_day ON leaf (tab_id, day, id) WHERE aside IS NULL;
CREATE INDEX leaf_card ON leaf (card) WHERE card <> '';
CREATE INDEX leaf_aside ON leaf (aside) WHERE aside IS NOT NULL;
CREATE TABLE version (@ at TEXT NOT NULL, title TEXT NOT NULL, text BLOB NOT NULL);
CREATE TABLE reading (@ at TEXT NOT NULL, zone TEXT NOT NULL DEFAULT '', question TEXT NOT NULL,
  topic TEXT NOT NULL DEFAULT '', querent TEXT NOT NULL DEFAULT '', deck TEXT NOT NULL DEFAULT '',
  deck_name TEXT NOT NULL DEFAULT '', titles TEXT NOT NULL DEFAULT '', spread TEXT NOT NULL,
  spread_copy TEXT NOT NULL, significator TEXT NOT NULL DEFAULT '',
  purpose TEXT NOT NULL DEFAULT '', month TEXT NOT NULL DEFAULT '',
  look_on TEXT NOT NULL DEFAULT '', look_state TEXT NOT NULL DEFAULT '',
  put_off INTEGER NOT NULL DEFAULT 0, on_screen INTEGER NOT NULL DEFAULT 0,
  mood TEXT NOT NULL DEFAULT '', venue TEXT NOT NULL DEFAULT '', photos TEXT NOT NULL DEFAULT '',
  shown TEXT NOT NULL DEFAULT '');
CREATE INDEX reading_month ON reading (month) WHERE month <> '';
CREATE INDEX reading_look_on ON reading (look_on) WHERE look_on <> '' AND look_state = '';
CREATE INDEX reading_answer ON reading (look_state, put_off)
  WHERE look_state = 'let go' OR put_off > 0;
CREATE TABLE placed (@ n INTEGER NOT NULL, label TEXT NOT NULL DEFAULT '', card TEXT NOT NULL,
  title TEXT NOT NULL, reversed INTEGER NOT NULL DEFAULT 0, note TEXT NOT NULL DEFAULT '');
CREATE INDEX placed_card ON placed (card, leaf_id);
CREATE TABLE expectation (@ place REAL NOT NULL, text TEXT NOT NULL, sure INTEGER NOT NULL,
  due TEXT NOT NULL, verdict TEXT NOT NULL DEFAULT '', judged TEXT NOT NULL DEFAULT '');
CREATE INDEX expectation_due ON expectation (due) WHERE verdict = '';
CREATE TABLE look_back (@ at TEXT NOT NULL, text TEXT NOT NULL, card TEXT NOT NULL DEFAULT '');
CREATE TABLE own_words (@ card TEXT NOT NULL, way TEXT NOT NULL, text TEXT NOT NULL,
  at TEXT NOT NULL);
CREATE INDEX own_words_card ON own_words (card);
CREATE TABLE source (@ key TEXT NOT NULL, fields TEXT NOT NULL DEFAULT '{}');
CREATE TABLE source_note (@ card TEXT NOT NULL, source TEXT NOT NULL, aspect TEXT NOT NULL,
  text TEXT NOT NULL, locator TEXT NOT NULL DEFAULT '', place REAL NOT NULL DEFAULT 0);
CREATE INDEX source_note_source ON source_note (source);
CREATE TABLE recall (@ card TEXT NOT NULL, direction TEXT NOT NULL,
  way TEXT NOT NULL DEFAULT '', stability REAL NOT NULL, difficulty REAL NOT NULL,
  state INTEGER NOT NULL, step INTEGER, last TEXT NOT NULL, due TEXT NOT NULL);
CREATE TABLE recall_answer (@ card TEXT NOT NULL, direction TEXT NOT NULL,
  way TEXT NOT NULL DEFAULT '', answer INTEGER NOT NULL, at TEXT NOT NULL);
CREATE TABLE deck (id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, name TEXT NOT NULL, titles TEXT NOT NULL,
  note TEXT NOT NULL DEFAULT '', favourite INTEGER NOT NULL DEFAULT 0, aside TEXT);
CREATE TABLE deck_face (id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, deck TEXT NOT NULL, card TEXT NOT NULL, file TEXT NOT NULL);
CREATE TABLE own_spread (id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, key TEXT NOT NULL, name TEXT NOT NULL, spread TEXT NOT NULL,
  aside TEXT);
CREATE TABLE unit (id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, place REAL NOT NULL, name TEXT NOT NULL,
  cards TEXT NOT NULL DEFAULT '[]', starts TEXT NOT NULL DEFAULT '',
  ends TEXT NOT NULL DEFAULT '', aims TEXT NOT NULL DEFAULT '', leaf TEXT NOT NULL DEFAULT '');
CREATE TABLE kept (id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, name TEXT NOT NULL, media TEXT NOT NULL, size INTEGER NOT NULL,
  sha256 TEXT NOT NULL, data BLOB NOT NULL);
CREATE TABLE link_rule (id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, leaf TEXT NOT NULL DEFAULT '', word TEXT NOT NULL,
  rule TEXT NOT NULL, card TEXT NOT NULL DEFAULT '');
CREATE INDEX kept_sha256 ON kept (sha256);
"""

OF_LEAF = """id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, leaf_id INTEGER NOT NULL REFERENCES leaf(id) ON DELETE CASCADE,"""

FIND = """
CREATE VIRTUAL TABLE leaf_find USING fts5(title, text, also, content='leaf', content_rowid='id',
  tokenize='unicode61 remove_diacritics 2', prefix='2 3')
"""

LEAF_TRIGGERS = (
    """CREATE TRIGGER leaf_find_in AFTER INSERT ON leaf BEGIN
  INSERT INTO leaf_find (rowid, title, text, also)
  VALUES (NEW.id, NEW.title, NEW.text, NEW.also); END""",
    """CREATE TRIGGER leaf_find_out AFTER DELETE ON leaf BEGIN
  INSERT INTO leaf_find (leaf_find, rowid, title, text, also)
  VALUES ('delete', OLD.id, OLD.title, OLD.text, OLD.also); END""",
    """CREATE TRIGGER leaf_find_again AFTER UPDATE OF title, text, also ON leaf BEGIN
  INSERT INTO leaf_find (leaf_find, rowid, title, text, also)
  VALUES ('delete', OLD.id, OLD.title, OLD.text, OLD.also);
  INSERT INTO leaf_find (rowid, title, text, also)
  VALUES (NEW.id, NEW.title, NEW.text, NEW.also); END""",
)

# The words of a leaf's structured parts, one a line, so that a hit can be shown in its line.
WORDS = {
    "reading": "question || char(10) || topic || char(10) || mood || char(10) || venue",
    "placed": "label || ': ' || title || CASE reversed WHEN 1 THEN ', reversed' ELSE '' END"
    " || CASE note WHEN '' THEN '' ELSE char(10) || note END",
    "expectation": "text",
    "look_back": "text",
    "own_words": "text",
    "source_note": "text",
    "source": "fields",
}

# Of own words only the latest version of each way can be found.
CURRENT = (
    " AND NOT EXISTS (SELECT 1 FROM own_words AS n WHERE n.leaf_id = t.leaf_id"
    " AND n.way = t.way AND (n.at, n.id) > (t.at, t.id))"
)


def _gather(leaf: str) -> str:
    """SQL that joins the words of one leaf's parts; `leaf` is the leaf's id in SQL."""
    parts = (
        f"(SELECT group_concat({words}, char(10)) FROM {table} AS t "
        f"WHERE leaf_id = {leaf}{CURRENT if table == 'own_words' else ''})"
        for table, words in WORDS.items()
    )
    return " || char(10) || ".join(f"coalesce({part}, '')" for part in parts)


def _part_triggers(table: str):
    for event, row in (("INSERT", "NEW"), ("UPDATE", "NEW"), ("DELETE", "OLD")):
        yield (
            f"CREATE TRIGGER {table}_also_{event.lower()} AFTER {event} ON {table} BEGIN "
            f"UPDATE leaf SET also = trim({_gather(f'{row}.leaf_id')}, char(10)) "
            f"WHERE id = {row}.leaf_id; END"
        )


def up(migrator, db):
    for statement in TABLES.replace("@", OF_LEAF).split(";"):
        if statement.strip():
            db.execute_sql(statement)
    # What is counted over a whole log stands in the index, so that no row is read for it.
    counted = {"reading": ", spread, deck, deck_name, topic", "placed": ", card, label"}
    for table in ("version", "reading", "placed", "expectation", "look_back", "source",
                  "own_words", "source_note", "recall", "recall_answer"):  # fmt: skip
        db.execute_sql(f"CREATE INDEX {table}_leaf ON {table} (leaf_id{counted.get(table, '')})")
    db.execute_sql(FIND)
    for statement in LEAF_TRIGGERS:
        db.execute_sql(statement)
    for table in WORDS:
        for statement in _part_triggers(table):
            db.execute_sql(statement)
