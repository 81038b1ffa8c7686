"""The models that check what is read as a pack's values, made of what those say of themselves.

Importing this module imports pydantic, which a pack that is only made can do without.
"""

from __future__ import annotations

import types
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

import pydantic

from itembank.packs.data.pack_data import NEEDED, Checked, Data, Published, ToldBy


class _Model(pydantic.BaseModel):
    """Unknown fields are faults."""

    model_config = pydantic.ConfigDict(extra="forbid", frozen=True)


_KINDS: dict[type[pydantic.BaseModel], type[Data]] = {}
_MODELS: dict[type[Data], type[pydantic.BaseModel]] = {}


def model_of(kind: type[Data]) -> type[pydantic.BaseModel]:
    """Return the model that checks values of a kind.

    >>> from itembank.packs.data.pack import TopicLine
    >>> data_of(model_of(TopicLine)(id="ratio.share", title="Sharing in a ratio"))
    TopicLine(id='ratio.share', title='Sharing in a ratio')
    """
    if kind in _MODELS:
        return _MODELS[kind]
    hints = get_type_hints(kind, include_extras=True)
    fields: dict[str, Any] = {}
    for name, (default, rules) in kind.model_fields.items():
        held = _model(default) if isinstance(default, Data) else default
        fields[name] = (
            _checked(hints[name]),
            pydantic.Field(**rules) if held is NEEDED else pydantic.Field(default=held, **rules),
        )
    made = pydantic.create_model(
        kind.__name__, __base__=_Model, __doc__=kind.__doc__, __module__=kind.__module__, **fields
    )
    _KINDS[made], _MODELS[kind] = kind, made
    return made


def data_of(value: Any) -> Any:
    """Return the values that some models have checked."""
    if isinstance(value, _Model):
        held = {name: data_of(part) for name, part in value.__dict__.items()}
        return _KINDS[type(value)](**held)
    if isinstance(value, list | tuple):
        return type(value)(map(data_of, value))
    return value


def _model(value: Data) -> pydantic.BaseModel:
    """Return a value as its model."""
    return model_of(type(value))(**value.__dict__)


def _checked(annotation: Any) -> Any:
    """Return an annotation in pydantic's terms."""
    if isinstance(annotation, type) and issubclass(annotation, Data):
        return model_of(annotation)
    origin, parts = get_origin(annotation), get_args(annotation)
    if origin is Annotated:
        told, *marks = parts
        return Annotated[(_checked(told), *map(_mark, marks))]
    if origin in (Union, types.UnionType):
        return Union[tuple(map(_checked, parts))]  # noqa: UP007 - made of what is known now
    if origin in (list, tuple, dict):
        return origin[tuple(map(_checked, parts))]
    return annotation


def _mark(mark: Any) -> Any:
    match mark:
        case Checked(check, first):
            return (pydantic.BeforeValidator if first else pydantic.AfterValidator)(check)
        case Published(schema):
            return pydantic.WithJsonSchema(dict(schema))
        case ToldBy(field):
            return pydantic.Field(discriminator=field)
    return mark
