from instruments.tone import CONSTRUCTION_WORDS, FAMILY_WORDS, Construction, Family


def test_every_family_is_explained():
    assert set(FAMILY_WORDS) == set(Family)


def test_every_construction_is_explained():
    assert set(CONSTRUCTION_WORDS) == set(Construction)


def test_no_two_constructions_are_explained_alike():
    assert len(set(CONSTRUCTION_WORDS.values())) == len(Construction)
