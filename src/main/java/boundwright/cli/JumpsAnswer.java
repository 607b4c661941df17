package boundwright.cli;

import boundwright.athlete.Athlete;
import boundwright.meet.MeetRepository.AthleteAttempt;
import boundwright.store.Workbench;
import java.util.List;

/**
 * All that is kept of an athlete's jumps, run-throughs, take-offs at the board and meets: a part of what is handed out when
 * an athlete asks for their data. Field by field in {@code docs/formats-json.md}.
 */
record JumpsAnswer(
    String athlete, List<JumpAnswer> jumps, List<LongJumpAnswers.One> longJumps, List<TakeOffsAnswers.One> inARow, List<RunUpAnswer.Run> runThroughs, List<AimJson.Gap> takeOffs, List<InMeet> attempts) {

  /** An attempt with the meet it belongs to. */
  record InMeet(long meetId, String meet, String date, String event, MeetJson.One attempt) {
    static InMeet of(AthleteAttempt a) {
      return new InMeet(a.meetId(), a.meet(), a.date().toString(), a.kept().attempt().event().label(), MeetJson.One.of(a.kept()));
    }
  }

  static JumpsAnswer of(Workbench bench, Athlete who) {
    double threshold = bench.jumpLog().settings().classThreshold();
    return new JumpsAnswer(
        who.name(),
        bench.jumpLog().jumps(who.id()).stream().map(j -> JumpAnswer.of(j, threshold)).toList(),
        bench.longJumps().longJumps(who.id()).stream().map(LongJumpAnswers.One::of).toList(),
        bench.runJumps().runJumps(who.id()).stream().map(TakeOffsAnswers.One::of).toList(),
        bench.runThroughs().runThroughs(who.id()).stream().map(RunUpAnswer.Run::of).toList(),
        bench.boardLog().gaps(who.id()).stream().map(AimJson.Gap::of).toList(),
        bench.meets().attemptsOf(who.id()).stream().map(InMeet::of).toList());
  }
}
