"""The course: units, aims, timetable."""
