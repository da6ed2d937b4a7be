from datetime import date, time

import pytest

from services.order import Item, Piece, PieceKind, Service


@pytest.mark.parametrize(
    ("piece", "credit"),
    [
        (Piece("Voluntary", composer="J. Stanley"), "J. Stanley"),
        (Piece("Psalm 23", PieceKind.PSALM), ""),
        (Piece("Holy, holy, holy", tune="Nicaea", metre="11.12.12.10"), "Nicaea · 11.12.12.10"),
        (
            Piece("Holy, holy, holy", tune="Nicaea", metre="11.12.12.10", composer="J. B. Dykes"),
            "Nicaea · 11.12.12.10 · J. B. Dykes",
        ),
        (Piece("Holy, holy, holy", tune="Nicaea"), "Nicaea"),
        (Piece("Trio", metre="8.8.8.8", composer="J. S. Bach"), "J. S. Bach"),
    ],
)
def test_under_the_title_stands_the_tune_or_the_composer(piece, credit):
    assert piece.credit == credit


def test_a_service_keeps_its_items_in_order():
    hymn = Item(1, "Offertory hymn", Piece("Let all the world", PieceKind.HYMN))
    voluntary = Item(2, "After the service", Piece("Toccata", PieceKind.VOLUNTARY))

    service = Service(7, date(2026, 11, 29), time(10, 30), "Advent", items=(hymn, voluntary))

    assert [item.label for item in service.items] == ["Offertory hymn", "After the service"]
