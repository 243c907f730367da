"""What every table of a job file has in common."""

from pydantic import BaseModel, ConfigDict, model_validator

from bom.read.quantity import dimension_of


class Section(BaseModel):
    """A table of the job file; a key that is not known here is a fault."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    @model_validator(mode="before")
    @classmethod
    def unknown_is_unsaid(cls, data: object) -> object:
        """Take "unknown" for a quantity that may be left out as left out."""
        if not isinstance(data, dict):
            return data
        may_be_unsaid = {
            name
            for name, field in cls.model_fields.items()
            if field.default is None and dimension_of(field.annotation, field.metadata)
        }
        return {key: value for key, value in data.items() if not (key in may_be_unsaid and value == "unknown")}
