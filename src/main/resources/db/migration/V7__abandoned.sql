-- An abandoned rep counts as load up to where it broke off. Null: nobody counted, or the rep was not abandoned.
ALTER TABLE rep ADD COLUMN broke_off_after INTEGER CHECK (broke_off_after >= 1);
