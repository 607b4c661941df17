package boundwright.cli;

import boundwright.jump.BestShares;
import boundwright.jump.ContactLine;
import boundwright.jump.JumpEntry;
import boundwright.jump.PhaseAnswer;
import boundwright.jump.WhereMetres;
import boundwright.quantity.LengthUnit;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What {@code phases --json} prints; field by field in {@code docs/formats-json.md}. */
record PhasesAnswer(
    @Nullable String athlete,
    @JsonUnwrapped JumpAnswer jump,
    double threshold,
    @Nullable Kept kept) {

  /** What the kept jumps of an athlete say. */
  record Kept(
      List<JumpAnswer> jumps,
      LineAnswer line,
      @Nullable BestAnswer best,
      List<WorthAnswer> worth,
      String said,
      String from,
      @Nullable String cannotTell) {
    static Kept of(PhaseAnswer a) {
      BestShares best = a.best();
      return new Kept(
          a.jumps().stream().map(j -> JumpAnswer.of(j, a.threshold())).toList(),
          LineAnswer.of(a.line(), a.squadAthletes()),
          best == null ? null : BestAnswer.of(best),
          a.worth().stream().map(WorthAnswer::of).toList(),
          a.words(LengthUnit.METRES),
          a.from(),
          a.cannotTell());
    }
  }

  /** The contact line. */
  record LineAnswer(String form, boolean formTold, Points a0_mps, Points a1, Points noise_mps, int contacts, int squadAthletes) {
    static LineAnswer of(ContactLine l, int squad) {
      return new LineAnswer(
          l.form().name().toLowerCase(Locale.ROOT),
          l.choice().told(),
          Points.of(l.intercept()),
          Points.of(l.slope()),
          Points.of(l.noise()),
          l.contacts(),
          squad);
    }
  }

  /** The best shares. */
  record BestAnswer(
      JumpAnswer.SharesAnswer shares,
      double total_m,
      JumpAnswer.SharesAnswer now,
      double nowTotal_m,
      MarksAnswer.Spread longer,
      boolean told,
      boolean onEdge,
      List<String> bounds,
      List<JumpAnswer.SharesAnswer> plateau) {
    static BestAnswer of(BestShares b) {
      return new BestAnswer(
          JumpAnswer.SharesAnswer.of(b.best().shares()),
          Json.length(b.best().total_m()),
          JumpAnswer.SharesAnswer.of(b.now().shares()),
          Json.length(b.now().total_m()),
          MarksAnswer.Spread.of(b.longer(b.best(), b.now())),
          b.told(),
          b.onEdge(),
          b.bounds().stream().map(e -> (e.upper() ? "highest " : "flattest ") + e.phase().label()).toList(),
          b.plateauOutline().stream().map(JumpAnswer.SharesAnswer::of).toList());
    }
  }

  /** What a small change is worth. */
  record WorthAnswer(String change, MarksAnswer.Spread metres, boolean told) {
    static WorthAnswer of(WhereMetres.Worth w) {
      return new WorthAnswer(w.change().label(), MarksAnswer.Spread.of(w.metres()), w.told());
    }
  }

  /** What {@code phases --keep} and {@code --undo-last} print. */
  record Entry(@Nullable JumpAnswer kept, @Nullable JumpAnswer takenBack, String athlete) {
    static Entry of(String athlete, JumpEntry jump, double threshold, boolean back) {
      JumpAnswer said = JumpAnswer.of(jump, threshold);
      return new Entry(back ? null : said, back ? said : null, athlete);
    }
  }

  /** The same of an athlete of whom no jump is kept: everything of the newest one is null. */
  record None(
      String athlete,
      @Nullable Long id,
      @Nullable String date,
      @Nullable Double hop_m,
      @Nullable Double step_m,
      @Nullable Double jump_m,
      @Nullable Double total_m,
      JumpAnswer.@Nullable SharesAnswer shares,
      @JsonProperty("class") @Nullable String kind,
      @Nullable Double toeToBoard_m,
      @Nullable Double official_m,
      @Nullable Double effective_m,
      @Nullable List<Double> carried,
      @Nullable Integer runUpSteps,
      @Nullable List<JumpAnswer.ContactAnswer> contacts,
      @Nullable String note,
      double threshold,
      Kept kept) {
    static None of(String athlete, double threshold, Kept kept) {
      return new None(athlete, null, null, null, null, null, null, null, null, null, null, null, null, null, null, null, threshold, kept);
    }
  }
}
