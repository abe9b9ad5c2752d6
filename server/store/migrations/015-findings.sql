-- What became of sending, as JSON {"key", "args"} of a text of the catalogue, so that it can be said in the language of whoever reads it.
-- The text beside it stays, in English; rows from before have only that and are shown as they are.
ALTER TABLE target_results ADD COLUMN finding TEXT;
ALTER TABLE phones ADD COLUMN last_finding TEXT;
ALTER TABLE lost_phones ADD COLUMN finding TEXT;
