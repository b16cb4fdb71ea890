-- How the replies of a clinic are said: warm or plain, units, own lines, snippets, names of patterns.
-- One JSON text; null until somebody changes it.

alter table clinics add column voice varchar;
alter table clinics add column voice_version integer not null default 1;
