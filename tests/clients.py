"""One signed-in client for each role."""

import pytest
from django.test import Client

from tests.factories import PersonFactory, UserFactory


def _client(user) -> Client:
    client = Client()
    client.force_login(user)
    return client


@pytest.fixture
def director_client(db) -> Client:
    return _client(PersonFactory(name="Dora Vance", role="director").user)


@pytest.fixture
def organist_client(db) -> Client:
    return _client(PersonFactory(name="Owen Reed", role="organist").user)


@pytest.fixture
def printer_client(db) -> Client:
    return _client(PersonFactory(name="Petra Sand", role="printer").user)


@pytest.fixture
def administrator_client(db) -> Client:
    return _client(UserFactory(username="root", is_superuser=True, is_staff=True))


@pytest.fixture
def stranger_client(db) -> Client:
    """Signed in, but nobody in the department."""
    return _client(UserFactory(username="stranger"))
