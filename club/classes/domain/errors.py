"""The one error of classes. The room's sentences turn its code into words for people."""

from __future__ import annotations


class ClassError(ValueError):
    """Something a class can't have or do. `code` says why, `values` with what.

    Of time: no_such_time (at, left_at, goes_on_at), no_such_year (year, first, last), no_length (minutes),
    has_own_zone (at).
    Of places: bad_place (text), more_than_fit (wanted, most), less_than_none (wanted).
    Of the queue: twice (person), not_on_the_list (person), not_held (person, state), without_place (person,
    state), no_such_place (place), place_taken (place, person), full (places), nobody_waiting.
    Of preparation: tasks_in_a_circle (keys), unknown_task (key, wanted_by), too_long_beforehand (key),
    less_than_none (wanted), no_such_job (key).
    """

    def __init__(self, code: str, /, **values: object) -> None:
        self.code = code
        self.values = values
        super().__init__(code)
