-- A checksum of every row, for the file only: its engine finds a damaged page, but not a flipped bit
-- in a text. The engine keeps these indexes itself, and its integrity check, which runs whenever the
-- file is opened, works out each sum anew. A new column belongs in here; this file then runs again.

drop index if exists clinics_sum;
drop index if exists cases_sum;
drop index if exists access_keys_sum;
drop index if exists rounds_sum;
drop index if exists notes_sum;
drop index if exists audit_sum;
drop index if exists retention_clock_sum;
drop index if exists photos_sum;
drop index if exists links_sum;

create index clinics_sum on clinics (row_sum(id, name, retention_days, version, opened_ms, sample,
  voice, voice_version));
create index cases_sum on cases (row_sum(id, clinic_id, nickname, state, version, holder, rounds,
  without_progress, opened_ms, changed_ms, waiting_ms));
create index access_keys_sum on access_keys (row_sum(id, clinic_id, case_id, role, name, salt, hash,
  issued_ms));
create index rounds_sum on rounds (row_sum(case_id, no, added_ms, added_by, added_role, post, request,
  advice, red_flag, cause, sheet, size_cut, reply, replied_by, replied_ms, outcome, outcome_said, sign,
  signs, choices, cloth));
create index notes_sum on notes (row_sum(id, case_id, written_ms, written_by, written_role, said));
create index audit_sum on audit (row_sum(id, clinic_id, done_ms, key_id, name, role, deed, case_id));
create index links_sum on links (row_sum(id, clinic_id, case_id, no, hash, issued_ms, ends_ms));
create index photos_sum on photos (row_sum(id, case_id, no, added_ms, added_by, added_role, alt, width,
  height, large, small));
create index retention_clock_sum on retention_clock (row_sum(id, seen_ms, held_ms));
