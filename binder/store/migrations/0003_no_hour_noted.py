"""A reading without an hour keeps its day alone; midnight said so until now, and is an hour now."""


def up(migrator, db):
    db.execute_sql("UPDATE reading SET at = substr(at, 1, 10) WHERE at LIKE '____-__-__T00:00'")
    db.execute_sql(
        "UPDATE leaf SET day = substr(day, 1, 10)"
        " WHERE kind = 'reading' AND day LIKE '____-__-__T00:00'"
    )
