from typing import Any

from django import forms

from services import models


class ServiceForm(forms.ModelForm):
    class Meta:
        model = models.Service
        fields = ["day", "starts", "title", "church"]
        widgets = {
            "day": forms.DateInput(attrs={"type": "date"}, format="%Y-%m-%d"),
            "starts": forms.TimeInput(attrs={"type": "time"}, format="%H:%M"),
        }


class PieceForm(forms.ModelForm):
    class Meta:
        model = models.Piece
        fields = ["kind", "title", "tune", "composer", "metre", "key", "verses", "source"]


class ItemForm(forms.ModelForm):
    class Meta:
        model = models.Item
        fields = ["piece", "label", "player", "instrument", "note"]

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["piece"].label_from_instance = _piece_label  # type: ignore[attr-defined]
        self.fields["player"].empty_label = "nobody yet"  # type: ignore[attr-defined]
        self.fields["instrument"].empty_label = "no organ"  # type: ignore[attr-defined]


class PersonForm(forms.ModelForm):
    class Meta:
        model = models.Person
        fields = ["name", "role"]


def _piece_label(piece: models.Piece) -> str:
    return " - ".join(part for part in (piece.title, piece.tune or piece.composer) if part)
