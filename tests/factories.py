"""Rows for tests that need a database."""

from datetime import date, time

import factory
from django.contrib.auth import get_user_model

from instruments.actions import save_organ
from registrations.combination import Combination, Hands
from registrations.registration import Change
from services import models
from tests.builders import an_organ


class UserFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = get_user_model()

    username = factory.Sequence(lambda n: f"person{n}")


class PersonFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = models.Person

    user = factory.SubFactory(UserFactory)
    name = factory.Sequence(lambda n: f"Person {n}")
    role = "organist"


class PieceFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = models.Piece

    kind = "hymn"
    title = factory.Sequence(lambda n: f"Hymn {n}")
    tune = "ST ANNE"
    composer = "W. Croft"
    metre = "CM"
    key = "C major"
    verses = 4


class ServiceFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = models.Service

    day = date(2026, 11, 29)
    starts = time(10, 0)
    title = "Sung Eucharist"
    church = "St Werrin"


class InstrumentFactory(factory.Factory):
    class Meta:
        model = save_organ

    organ = factory.LazyFunction(an_organ)


class ItemFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = models.Item

    service = factory.SubFactory(ServiceFactory)
    piece = factory.SubFactory(PieceFactory)
    instrument = factory.SubFactory(InstrumentFactory)
    player = factory.SubFactory(PersonFactory)
    label = "Opening hymn"
    position = factory.Sequence(int)


def a_change(*drawn: str, cue: str = "Verse 1", right: str = "great", feet: str = "") -> Change:
    """A change as a value, ready for ``save_registration``."""
    return Change(cue, Combination(frozenset(drawn), Hands(right, right, feet or None)))
