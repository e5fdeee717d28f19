"""More of what a leaf holds: fields and imagery of a card, pairs, notes and words of handouts."""

TABLES = """
CREATE TABLE field (@ name TEXT NOT NULL, text TEXT NOT NULL);
CREATE TABLE imagery (@ card TEXT NOT NULL, deck TEXT NOT NULL DEFAULT '', x REAL NOT NULL,
  y REAL NOT NULL, text TEXT NOT NULL, place REAL NOT NULL DEFAULT 0);
CREATE TABLE pair (@ card TEXT NOT NULL, other TEXT NOT NULL, text TEXT NOT NULL DEFAULT '');
CREATE INDEX pair_cards ON pair (other, card);
CREATE TABLE page_note (@ file TEXT NOT NULL, page INTEGER NOT NULL, text TEXT NOT NULL);
CREATE TABLE filed_text (@ file TEXT NOT NULL, text TEXT NOT NULL);
CREATE TABLE printed (@ at TEXT NOT NULL)
"""

NEW = ("field", "imagery", "pair", "page_note", "filed_text", "printed")

OF_LEAF = """id INTEGER PRIMARY KEY AUTOINCREMENT, uid TEXT NOT NULL UNIQUE,
  changed INTEGER NOT NULL, leaf_id INTEGER NOT NULL REFERENCES leaf(id) ON DELETE CASCADE,"""

# The words of all structured parts of a leaf, one a line, as in the first shape and with the new.
WORDS = {
    "reading": "question || char(10) || topic || char(10) || mood || char(10) || venue",
    "placed": "label || ': ' || title || CASE reversed WHEN 1 THEN ', reversed' ELSE '' END"
    " || CASE note WHEN '' THEN '' ELSE char(10) || note END",
    "expectation": "text",
    "look_back": "text",
    "own_words": "text",
    "source_note": "text",
    "source": "fields",
    "field": "text",
    "imagery": "text",
    "pair": "text",
    "page_note": "text",
    "filed_text": "text",
}

# Packed versions are passed over first, so that a long history is not compared each with all.
CURRENT = (
    " AND t.packed IS NULL AND NOT EXISTS (SELECT 1 FROM own_words AS n WHERE n.leaf_id = t.leaf_id"
    " AND n.way = t.way AND n.packed IS NULL AND (n.at, n.id) > (t.at, t.id))"
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
        name = f"{table}_also_{event.lower()}"
        yield f"DROP TRIGGER IF EXISTS {name}"
        yield (
            f"CREATE TRIGGER {name} AFTER {event} ON {table} BEGIN "
            f"UPDATE leaf SET also = trim({_gather(f'{row}.leaf_id')}, char(10)) "
            f"WHERE id = {row}.leaf_id; END"
        )


def up(migrator, db):
    for statement in TABLES.replace("@", OF_LEAF).split(";"):
        db.execute_sql(statement)
    for table in NEW:
        db.execute_sql(f"CREATE INDEX {table}_leaf ON {table} (leaf_id)")
    # A version of own words that is not the latest keeps `packed` and an empty text.
    db.execute_sql("ALTER TABLE own_words ADD COLUMN packed BLOB")
    for table in WORDS:
        for statement in _part_triggers(table):
            db.execute_sql(statement)
