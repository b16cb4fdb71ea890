-- A clinic of invented wearers may be thrown away with one click; a real one may not.

alter table clinics add column sample boolean not null default false;
