from collections.abc import Mapping
from typing import Any

from django import forms
from django.core.files.uploadedfile import UploadedFile

from instruments.textfiles import list_text

LARGEST_FILE = 200_000


class PasteForm(forms.Form):
    """A stop list, pasted or uploaded, with lines mended where they were shown."""

    text = forms.CharField(
        label="Stop list",
        strip=False,
        required=False,
        widget=forms.Textarea(attrs={"spellcheck": "false", "autocomplete": "off"}),
        help_text="As printed: headings, a stop a line, couplers and tremulants where they stand.",
    )
    name = forms.CharField(
        label="Name of the organ",
        max_length=200,
        required=False,
        help_text="Left empty, the first line is taken.",
    )
    file = forms.FileField(
        label="Or a file",
        required=False,
        help_text="A text file or a table: .txt, .csv or .tsv.",
        widget=forms.ClearableFileInput(attrs={"accept": ".txt,.csv,.tsv,text/plain"}),
    )

    def clean_file(self) -> UploadedFile | None:
        file: UploadedFile | None = self.cleaned_data["file"]
        if file is not None and (file.size or 0) > LARGEST_FILE:
            raise forms.ValidationError(
                f"The file has {file.size:,} bytes; at most {LARGEST_FILE:,} are read."
            )
        return file


def with_its_text(data: Mapping[str, Any], files: Mapping[str, UploadedFile]) -> dict[str, Any]:
    """What was sent, as the form should hold it: an upload put in, mended lines put in place."""
    text = str(data.get("text", ""))
    file = files.get("file")
    if file is not None and (file.size or 0) <= LARGEST_FILE:
        text = list_text(file.name or "", file.read())
    return {"text": _mended(text, data), "name": data.get("name", "")}


def _mended(text: str, data: Mapping[str, Any]) -> str:
    """A mended line counts only where the line it was shown for still stands."""
    lines = text.splitlines()
    for at, line in enumerate(lines):
        if data.get(f"was-{at + 1}") == line.strip() != "":
            lines[at] = str(data.get(f"line-{at + 1}", line))
    return "\n".join(lines) if lines else text
