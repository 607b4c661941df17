package boundwright.cli;

import boundwright.jump.JumpEntry;
import boundwright.jump.MeasuredContact;
import boundwright.jump.MeasuredJump;
import boundwright.jump.Phases;
import boundwright.jump.Shares;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** A triple jump as {@code phases --json} prints it; field by field in {@code docs/formats-json.md}. */
record JumpAnswer(
    @Nullable Long id,
    @Nullable String date,
    double hop_m,
    double step_m,
    double jump_m,
    double total_m,
    SharesAnswer shares,
    @JsonProperty("class") String kind,
    @Nullable Double toeToBoard_m,
    @Nullable Double official_m,
    @Nullable Double effective_m,
    @Nullable List<Double> carried,
    @Nullable Integer runUpSteps,
    @Nullable List<ContactAnswer> contacts,
    String note) {

  /** Speeds and heights of one phase as they were measured. */
  record ContactAnswer(
      String phase,
      double vxIn_mps,
      double vxOut_mps,
      double touchdownVy_mps,
      double takeOffVy_mps,
      double takeOffHeight_m,
      double touchdownHeight_m,
      double ground_m) {
    static List<ContactAnswer> of(MeasuredJump jump) {
      return IntStream.range(0, 3).mapToObj(i -> of(jump.contacts().get(i), jump.bodies().get(i))).toList();
    }

    private static ContactAnswer of(MeasuredContact c, MeasuredJump.Body b) {
      return new ContactAnswer(
          c.phase().label(),
          Json.length(c.vxIn()),
          Json.length(c.vxOut()),
          Json.length(c.touchdownVy()),
          Json.length(c.takeOffVy()),
          Json.length(b.takeOffHeight_m()),
          Json.length(b.touchdownHeight_m()),
          Json.length(b.ground_m()));
    }
  }

  /** Parts of the whole, 0 to 1. */
  record SharesAnswer(double hop, double step, double jump) {
    static SharesAnswer of(Shares s) {
      return new SharesAnswer(Json.chance(s.hop()), Json.chance(s.step()), Json.chance(s.jump()));
    }
  }

  static JumpAnswer of(JumpEntry jump, double threshold) {
    return of(jump.id(), jump.date().toString(), jump.phases(), jump.speeds(), threshold, jump.steps(), jump.note());
  }

  static JumpAnswer of(Phases phases, @Nullable MeasuredJump speeds, double threshold) {
    return of(null, null, phases, speeds, threshold, null, "");
  }

  private static JumpAnswer of(
      @Nullable Long id,
      @Nullable String date,
      Phases p,
      @Nullable MeasuredJump speeds,
      double threshold,
      @Nullable Integer steps,
      String note) {
    boolean toe = p.toeToBoard_m() != null;
    return new JumpAnswer(
        id,
        date,
        Json.length(p.hop_m()),
        Json.length(p.step_m()),
        Json.length(p.jump_m()),
        Json.length(p.total_m()),
        SharesAnswer.of(p.shares()),
        p.shares().classify(threshold).label(),
        Json.lengthOrNull(p.toeToBoard_m()),
        toe || p.from() == Phases.From.BOARD ? (Double) Json.length(p.official_m()) : null,
        toe || p.from() == Phases.From.TOE ? (Double) Json.length(p.effective_m()) : null,
        speeds == null ? null : speeds.carried().stream().map(Json::chance).toList(),
        steps,
        speeds == null ? null : ContactAnswer.of(speeds),
        note);
  }
}
