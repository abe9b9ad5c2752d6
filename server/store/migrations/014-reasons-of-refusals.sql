-- Why a message was refused, as data that can be said in any language (shared/readings/reason.ts), beside its English sentence. NULL: an earlier
-- version refused it and kept the sentence only.
ALTER TABLE refused ADD COLUMN reason_data TEXT CHECK (json_valid(reason_data));
