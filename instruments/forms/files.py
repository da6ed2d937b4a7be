from typing import Any

from django import forms
from django.core.exceptions import ValidationError

from instruments.organ import Organ
from instruments.organfile import OrganFileError, parse_organ

LARGEST = 2 * 1024 * 1024


class OrganFileForm(forms.Form):
    """An organ file, read and looked through; ``file`` is then the organ."""

    file = forms.FileField(
        label="Organ file",
        allow_empty_file=True,
        widget=forms.FileInput(attrs={"accept": ".json,application/json"}),
        help_text="A .json file, as the page of an organ hands it out.",
    )

    def clean_file(self) -> Organ:
        written: Any = self.cleaned_data["file"]
        if written.size > LARGEST:
            raise ValidationError("An organ file has at most 2 MB: this is something else.")
        try:
            return parse_organ(written.read().decode("utf-8-sig"))
        except UnicodeDecodeError as error:
            raise ValidationError("This is not an organ file: it is not text in UTF-8.") from error
        except OrganFileError as error:
            raise ValidationError(str(error)) from error
