-- Whose data changed in which transaction: as in the script of the same number for SQLite.
CREATE TABLE changed (
  whose BIGINT PRIMARY KEY,
  count BIGINT NOT NULL
);
CREATE INDEX changed_since ON changed (count);

CREATE FUNCTION note_changed(number BIGINT) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO changed AS c (whose, count) SELECT coalesce(number, 0), w.count FROM written w
  ON CONFLICT (whose) DO UPDATE SET count = excluded.count WHERE c.count <> excluded.count;
END $$;

CREATE FUNCTION changed_own() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP <> 'INSERT' THEN PERFORM note_changed(OLD.athlete_id); END IF;
  IF TG_OP <> 'DELETE' THEN PERFORM note_changed(NEW.athlete_id); END IF;
  RETURN NULL;
END $$;

CREATE FUNCTION changed_athlete() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM note_changed(CASE WHEN TG_OP = 'DELETE' THEN OLD.id ELSE NEW.id END);
  RETURN NULL;
END $$;

CREATE FUNCTION changed_everybody() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM note_changed(0);
  RETURN NULL;
END $$;

CREATE TRIGGER known_mark_added AFTER INSERT ON known_mark FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER known_mark_edited AFTER UPDATE ON known_mark FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER known_mark_removed AFTER DELETE ON known_mark FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER run_up_added AFTER INSERT ON run_up FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER run_up_edited AFTER UPDATE ON run_up FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER run_up_removed AFTER DELETE ON run_up FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER rep_added AFTER INSERT ON rep FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER rep_edited AFTER UPDATE ON rep FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER rep_removed AFTER DELETE ON rep FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER learned_added AFTER INSERT ON learned FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER learned_edited AFTER UPDATE ON learned FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER learned_removed AFTER DELETE ON learned FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER care_added AFTER INSERT ON care FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER care_edited AFTER UPDATE ON care FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER care_removed AFTER DELETE ON care FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER pain_added AFTER INSERT ON pain FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER pain_edited AFTER UPDATE ON pain FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER pain_removed AFTER DELETE ON pain FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER medical_hold_added AFTER INSERT ON medical_hold FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER medical_hold_edited AFTER UPDATE ON medical_hold FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER medical_hold_removed AFTER DELETE ON medical_hold FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER guard_override_added AFTER INSERT ON guard_override FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER guard_override_edited AFTER UPDATE ON guard_override FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER guard_override_removed AFTER DELETE ON guard_override FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER session_rating_added AFTER INSERT ON session_rating FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER session_rating_edited AFTER UPDATE ON session_rating FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER session_rating_removed AFTER DELETE ON session_rating FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER family_rung_added AFTER INSERT ON family_rung FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER family_rung_edited AFTER UPDATE ON family_rung FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER family_rung_removed AFTER DELETE ON family_rung FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER other_work_added AFTER INSERT ON other_work FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER other_work_edited AFTER UPDATE ON other_work FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER other_work_removed AFTER DELETE ON other_work FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER last_week_added AFTER INSERT ON last_week FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER last_week_edited AFTER UPDATE ON last_week FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER last_week_removed AFTER DELETE ON last_week FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER measured_jump_added AFTER INSERT ON measured_jump FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER measured_jump_edited AFTER UPDATE ON measured_jump FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER measured_jump_removed AFTER DELETE ON measured_jump FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER run_through_added AFTER INSERT ON run_through FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER run_through_edited AFTER UPDATE ON run_through FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER run_through_removed AFTER DELETE ON run_through FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER board_gap_added AFTER INSERT ON board_gap FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER board_gap_edited AFTER UPDATE ON board_gap FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER board_gap_removed AFTER DELETE ON board_gap FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER test_score_added AFTER INSERT ON test_score FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER test_score_edited AFTER UPDATE ON test_score FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER test_score_removed AFTER DELETE ON test_score FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER tap_added AFTER INSERT ON tap FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER tap_edited AFTER UPDATE ON tap FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER tap_removed AFTER DELETE ON tap FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER away_added AFTER INSERT ON away FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER away_edited AFTER UPDATE ON away FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER away_removed AFTER DELETE ON away FOR EACH ROW EXECUTE FUNCTION changed_own();

CREATE TRIGGER season_start_added AFTER INSERT ON season_start FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER season_start_edited AFTER UPDATE ON season_start FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER season_start_removed AFTER DELETE ON season_start FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER meet_entrant_added AFTER INSERT ON meet_entrant FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER meet_entrant_edited AFTER UPDATE ON meet_entrant FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER meet_entrant_removed AFTER DELETE ON meet_entrant FOR EACH ROW EXECUTE FUNCTION changed_own();

CREATE TRIGGER clip_added AFTER INSERT ON clip FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER clip_edited AFTER UPDATE OF athlete_id, approach_steps ON clip FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER clip_removed AFTER DELETE ON clip FOR EACH ROW EXECUTE FUNCTION changed_own();
CREATE TRIGGER athlete_added AFTER INSERT ON athlete FOR EACH ROW EXECUTE FUNCTION changed_athlete();
CREATE TRIGGER athlete_edited AFTER UPDATE ON athlete FOR EACH ROW EXECUTE FUNCTION changed_athlete();
CREATE TRIGGER athlete_removed AFTER DELETE ON athlete FOR EACH ROW EXECUTE FUNCTION changed_athlete();

CREATE FUNCTION changed_jump_contact() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM note_changed((SELECT athlete_id FROM measured_jump WHERE id = CASE WHEN TG_OP = 'DELETE' THEN OLD.jump_id ELSE NEW.jump_id END));
  RETURN NULL;
END $$;
CREATE TRIGGER jump_contact_added AFTER INSERT ON jump_contact FOR EACH ROW EXECUTE FUNCTION changed_jump_contact();
CREATE TRIGGER jump_contact_edited AFTER UPDATE ON jump_contact FOR EACH ROW EXECUTE FUNCTION changed_jump_contact();
CREATE TRIGGER jump_contact_removed AFTER DELETE ON jump_contact FOR EACH ROW EXECUTE FUNCTION changed_jump_contact();
CREATE FUNCTION changed_meet_attempt() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM note_changed((SELECT athlete_id FROM meet_entrant WHERE id = CASE WHEN TG_OP = 'DELETE' THEN OLD.entrant_id ELSE NEW.entrant_id END));
  RETURN NULL;
END $$;
CREATE TRIGGER meet_attempt_added AFTER INSERT ON meet_attempt FOR EACH ROW EXECUTE FUNCTION changed_meet_attempt();
CREATE TRIGGER meet_attempt_edited AFTER UPDATE ON meet_attempt FOR EACH ROW EXECUTE FUNCTION changed_meet_attempt();
CREATE TRIGGER meet_attempt_removed AFTER DELETE ON meet_attempt FOR EACH ROW EXECUTE FUNCTION changed_meet_attempt();
CREATE FUNCTION changed_contact_time() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM note_changed((SELECT athlete_id FROM clip WHERE id = CASE WHEN TG_OP = 'DELETE' THEN OLD.clip_id ELSE NEW.clip_id END));
  RETURN NULL;
END $$;
CREATE TRIGGER contact_time_added AFTER INSERT ON contact_time FOR EACH ROW EXECUTE FUNCTION changed_contact_time();
CREATE TRIGGER contact_time_edited AFTER UPDATE ON contact_time FOR EACH ROW EXECUTE FUNCTION changed_contact_time();
CREATE TRIGGER contact_time_removed AFTER DELETE ON contact_time FOR EACH ROW EXECUTE FUNCTION changed_contact_time();

CREATE TRIGGER setting_added AFTER INSERT ON setting FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER setting_edited AFTER UPDATE ON setting FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER setting_removed AFTER DELETE ON setting FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER drill_added AFTER INSERT ON drill FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER drill_edited AFTER UPDATE ON drill FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER drill_removed AFTER DELETE ON drill FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER day_plan_added AFTER INSERT ON day_plan FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER day_plan_edited AFTER UPDATE ON day_plan FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER day_plan_removed AFTER DELETE ON day_plan FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER day_drill_added AFTER INSERT ON day_drill FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER day_drill_edited AFTER UPDATE ON day_drill FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER day_drill_removed AFTER DELETE ON day_drill FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER squad_prior_added AFTER INSERT ON squad_prior FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER squad_prior_edited AFTER UPDATE ON squad_prior FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER squad_prior_removed AFTER DELETE ON squad_prior FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER own_fault_added AFTER INSERT ON own_fault FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER own_fault_edited AFTER UPDATE ON own_fault FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER own_fault_removed AFTER DELETE ON own_fault FOR EACH ROW EXECUTE FUNCTION changed_everybody();

CREATE TRIGGER meet_added AFTER INSERT ON meet FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER meet_edited AFTER UPDATE OF date ON meet FOR EACH ROW EXECUTE FUNCTION changed_everybody();
CREATE TRIGGER meet_removed AFTER DELETE ON meet FOR EACH ROW EXECUTE FUNCTION changed_everybody();
