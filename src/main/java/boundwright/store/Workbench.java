package boundwright.store;

import boundwright.account.AccountRepository;
import boundwright.account.BondRepository;
import boundwright.account.PasskeyRepository;
import boundwright.approach.ApproachDesk;
import boundwright.approach.aim.AimDesk;
import boundwright.approach.aim.BoardLog;
import boundwright.approach.run.RunThroughLog;
import boundwright.athlete.AthleteRepository;
import boundwright.athlete.person.People;
import boundwright.clip.day.Parts;
import boundwright.clip.day.SessionDesk;
import boundwright.clip.desk.ClipDesk;
import boundwright.clip.pose.Weights;
import boundwright.clip.scan.ScanProcess;
import boundwright.clip.session.CutProcess;
import boundwright.flight.Logbook;
import boundwright.flight.RepStore;
import boundwright.jump.JumpLog;
import boundwright.jump.PhaseDesk;
import boundwright.load.CareRepository;
import boundwright.load.LoadDesk;
import boundwright.load.LoadRepository;
import boundwright.load.WorkLog;
import boundwright.meet.MeetDesk;
import boundwright.meet.MeetRepository;
import boundwright.pairing.PhoneRepository;
import boundwright.readiness.LadderDesk;
import boundwright.readiness.LadderRepository;
import boundwright.readiness.TestRepository;
import boundwright.runway.MarkAdvisor;
import boundwright.runway.Rungs;
import boundwright.runway.SettingsRepository;
import boundwright.season.SeasonRepository;
import boundwright.season.ladder.StayRepository;
import boundwright.season.order.OrderDesk;
import boundwright.season.order.OrderRepository;
import boundwright.store.account.SqlAccounts;
import boundwright.store.account.SqlBonds;
import boundwright.store.account.SqlPasskeys;
import boundwright.store.backup.BackupDesk;
import boundwright.store.backup.DataCheck;
import boundwright.store.backup.Everything;
import boundwright.store.backup.Leftovers;
import boundwright.store.backup.Restore;
import boundwright.store.engine.DataPlace;
import boundwright.store.engine.Database;
import boundwright.store.engine.JobQueue;
import boundwright.store.engine.Schema;
import boundwright.store.people.SqlPeople;
import boundwright.store.view.Seen;
import boundwright.store.view.SeenAthletes;
import boundwright.store.view.SeenCare;
import boundwright.store.view.SeenPeople;
import boundwright.technique.LookRepository;
import boundwright.track.Attendance;
import boundwright.track.PlannedDrills;
import boundwright.track.TrackDesk;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/** One open data folder with everything wired to it. Safe to use from many threads; close it when done. */
public final class Workbench implements AutoCloseable {
  private final Database database;
  private final Clock clock;
  private final Seen seen;
  private final ClipDesk.Scan scan;
  private final SessionDesk.Cut cut;
  private final AthleteRepository athletes;
  private final SqlReps reps;
  private final SqlSettings settings;
  private final CareRepository care;
  private final SqlLoad load;
  private final SqlLadder ladder;
  private final SqlStays stays;
  private final SqlLooks looks;
  private final SqlTests tests;
  private final SqlJumpLog jumpLog;
  private final SqlRunThroughs runThroughs;
  private final SqlBoardLog boardLog;
  private final SqlMeets meets;
  private final WorkLog workLog;
  private final SqlPhones phones;
  private final SqlAccounts accounts;
  private final SqlSeasons seasons;
  private final Logbook logbook;
  private final MarkAdvisor advisor;
  private final LoadDesk loadDesk;
  private final LadderDesk ladderDesk;
  private final PhaseDesk phaseDesk;
  private final ApproachDesk approachDesk;
  private final AimDesk aimDesk;
  private final MeetDesk meetDesk;
  private final TrackDesk track;
  private final Attendance attendance;
  private final SqlOrder order;
  private final OrderDesk orderDesk;
  private final SqlTaken taken;
  private final BackupDesk backups;
  private final JobQueue clipQueue;
  private final ClipDesk clips;
  private final SessionDesk sessions;
  private final People people;

  private Workbench(Database database, Clock clock, ClipDesk.Scan scan, SessionDesk.Cut cut, Seen seen) {
    this.database = database;
    this.clock = clock;
    this.seen = seen;
    this.scan = scan;
    this.cut = cut;
    Long only = seen.only();
    SqlAthletes everybody = new SqlAthletes(database);
    this.athletes = only == null ? everybody : new SeenAthletes(everybody, only);
    this.reps = new SqlReps(database);
    this.settings = new SqlSettings(database, clock);
    SqlCare bodies = new SqlCare(database);
    this.care = seen.bodies() ? bodies : new SeenCare(bodies);
    this.accounts = new SqlAccounts(database);
    this.ladder = new SqlLadder(database);
    this.stays = new SqlStays(database);
    this.looks = new SqlLooks(database);
    this.tests = new SqlTests(database);
    this.jumpLog = new SqlJumpLog(database);
    this.runThroughs = new SqlRunThroughs(database);
    this.meets = new SqlMeets(database);
    this.phones = new SqlPhones(database);
    this.seasons = new SqlSeasons(database);
    this.boardLog = new SqlBoardLog(database, meets);
    this.logbook = new Logbook(reps, athletes);
    this.load = new SqlLoad(database);
    this.workLog = new SqlWorkLog(database);
    this.loadDesk = new LoadDesk(workLog, new PlannedDrills(settings, this::rungs), load, bodies, clock, seen.bodies());
    this.ladderDesk = new LadderDesk(reps, loadDesk, ladder, clock);
    this.advisor = new MarkAdvisor(logbook, clock, this::rungs);
    this.phaseDesk = new PhaseDesk(jumpLog);
    this.aimDesk = new AimDesk(boardLog);
    this.approachDesk = new ApproachDesk(runThroughs, jumpLog, athletes, aimDesk);
    this.meetDesk = new MeetDesk(meets, aimDesk);
    this.track = new TrackDesk(logbook, reps, advisor, new SqlTaps(database), clock);
    this.attendance = new Attendance(athletes, new SqlRoll(database), clock);
    this.order = new SqlOrder(database);
    this.orderDesk = new OrderDesk(advisor, reps, loadDesk, clock);
    this.taken = new SqlTaken(database);
    this.backups = new BackupDesk(database.folder(), clock, database::copyInto, this::erased, new SqlBackups(database, settings));
    this.people = new People(seen.equals(Seen.ALL) ? new SqlPeople(database) : new SeenPeople(new SqlPeople(database), only), clock);
    this.clipQueue = JobQueue.of(database);
    SqlSessions sessionRows = new SqlSessions(database, attendance);
    Path clipFolder = database.folder().resolve("clips");
    Path sessionFolder = database.folder().resolve("sessions");
    this.clips =
        new ClipDesk(new SqlClips(database), clipQueue, clipFolder, logbook, looks, clock, scan, new Parts(sessionRows, sessionFolder));
    this.sessions =
        new SessionDesk(sessionRows, clipQueue.sessions(), sessionFolder, Weights.folder(clipFolder), clips, logbook, people, clock, cut);
  }

  /**
   * Opens a data folder; the folder and the database in it are made if they are missing.
   *
   * @param dataDir the folder that holds {@code boundwright.db}
   * @param clock tells which day it is
   * @throws boundwright.quantity.RefusedException if the folder cannot be used or the database is locked, damaged, of another
   *     program or of a newer one; nothing in it was changed then
   */
  public static Workbench open(Path dataDir, Clock clock) {
    return open(DataPlace.of(dataDir), clock);
  }

  /** As {@link #open(Path, Clock)}, with the rows in the folder or in a PostgreSQL. */
  public static Workbench open(DataPlace place, Clock clock) {
    return open(place, clock, Database.Tuning.USUAL);
  }

  /** As {@link #open(Path, Clock)}, with another reader of films. */
  public static Workbench open(Path dataDir, Clock clock, ClipDesk.Scan scan) {
    return open(DataPlace.of(dataDir), clock, scan, CutProcess::cut);
  }

  /** As {@link #open(Path, Clock)}, with another reader of films and another cutter of sessions. */
  public static Workbench open(DataPlace place, Clock clock, ClipDesk.Scan scan, SessionDesk.Cut cut) {
    return new Workbench(Database.open(place, Database.Tuning.USUAL, clock), clock, scan, cut, Seen.ALL);
  }

  static Workbench open(DataPlace place, Clock clock, Database.Tuning tuning) {
    return new Workbench(Database.open(place, tuning, clock), clock, (order, progress) -> ScanProcess.scan(order, progress::at), CutProcess::cut, Seen.ALL);
  }

  /**
   * The same open store for somebody who sees less of it. It reads no films, and closing it closes nothing: it ends with this one.
   */
  public Workbench seen(Seen less) {
    return new Workbench(database, clock, scan, cut, less);
  }

  /**
   * Opens the store of another club: a folder of its own inside this one, made if it is missing, and in a PostgreSQL a schema of its own.
   *
   * @param club its number
   */
  public Workbench club(long club) {
    return open(database.place().club(club), clock, scan, cut);
  }

  /**
   * Brings backups back into a data folder that nobody has open.
   *
   * @param dataDir the folder; it is made if it is missing
   */
  public static Restore restoring(Path dataDir, Clock clock) {
    return new Restore(dataDir, clock, staged -> Database.open(DataPlace.of(staged), Database.Tuning.USUAL, clock).close(), Schema::make);
  }

  /** The random names of those who were erased. */
  private Set<String> erased() {
    return database.read(h -> h.createQuery("SELECT token FROM erasure").mapTo(String.class).set());
  }

  /** The rungs of everybody as they are now. */
  private Rungs rungs() {
    return ladderDesk.rungs()::applyAsInt;
  }

  /** The squad. */
  public AthleteRepository athletes() {
    return athletes;
  }

  /** The reps and what was learned from them. */
  public RepStore reps() {
    return reps;
  }

  /** The coach's settings and the plan of the day. */
  public SettingsRepository settings() {
    return settings;
  }

  /** Other work, the weeks before the log, and from when a part of the year holds. */
  public LoadRepository load() {
    return load;
  }

  /** Growing, pain, medical holds, session ratings, the guard's limits and what was decided against them. */
  public CareRepository care() {
    return care;
  }

  /** Rungs of each family of drills, decisions, and what the gate asks. */
  public LadderRepository ladder() {
    return ladder;
  }

  /** Who stayed how long at which approach, and how often they came. */
  public StayRepository stays() {
    return stays;
  }

  /** The coach's own faults and what second observers saw. */
  public LookRepository looks() {
    return looks;
  }

  /** Test scores with their protocol. */
  public TestRepository tests() {
    return tests;
  }

  /** Judges an athlete's day, so far and with the plan. */
  public LoadDesk loadDesk() {
    return loadDesk;
  }

  /** Asks the gate. */
  public LadderDesk ladderDesk() {
    return ladderDesk;
  }

  /** Measured jumps. */
  public JumpLog jumpLog() {
    return jumpLog;
  }

  /** Run-throughs of the full run-up. */
  public RunThroughLog runThroughs() {
    return runThroughs;
  }

  /** Take-offs at the board. */
  public BoardLog boardLog() {
    return boardLog;
  }

  /** Meets, their attempts, and the settings of the jump and the meet. */
  public MeetRepository meets() {
    return meets;
  }

  /** The phones that are let in. */
  public PhoneRepository phones() {
    return phones;
  }

  /** Accounts, sessions and notes; those of the first club's store count. */
  public AccountRepository accounts() {
    return accounts;
  }

  /** Passkeys of the accounts. */
  public PasskeyRepository passkeys() {
    return new SqlPasskeys(database);
  }

  /** Logins of a department that are connected with accounts. */
  public BondRepository bonds() {
    return new SqlBonds(database);
  }

  /** Seasons and their published plans. */
  public SeasonRepository seasons() {
    return seasons;
  }

  /** Says how an athlete shares a jump out and where the metres are. */
  public PhaseDesk phaseDesk() {
    return phaseDesk;
  }

  /** Says where the full run-up starts. */
  public ApproachDesk approachDesk() {
    return approachDesk;
  }

  /** Says where to aim at the board. */
  public AimDesk aimDesk() {
    return aimDesk;
  }

  /** Says how a meet stands and what the next attempt is for. */
  public MeetDesk meetDesk() {
    return meetDesk;
  }

  /** What the legs did, day by day. */
  public WorkLog workLog() {
    return workLog;
  }

  /** The coach's clips. They wait until {@link ClipDesk#start} is called, by the one program that shall read them. */
  public ClipDesk clips() {
    return clips;
  }

  /** The coach's films of sessions; they wait as the clips do, and are to be started before them. */
  public SessionDesk sessions() {
    return sessions;
  }

  /** Who somebody is, and what was agreed to. */
  public People people() {
    return people;
  }

  /** Logs reps and learns from them. */
  public Logbook logbook() {
    return logbook;
  }

  /** Logs what happens at the runway and takes it back. */
  public TrackDesk track() {
    return track;
  }

  /** Says who is here on a day, and in which groups. */
  public Attendance attendance() {
    return attendance;
  }

  /** The settings of a session's order and the order of the day. */
  public OrderRepository order() {
    return order;
  }

  /** Says what the order of today's session is asked of. */
  public OrderDesk orderDesk() {
    return orderDesk;
  }

  /** Says where the tapes go. */
  public MarkAdvisor advisor() {
    return advisor;
  }

  /** Changes whenever anything is written here, by this program or another, so that what was read need not be read again. */
  public String stamp() {
    return database.stamp();
  }

  /**
   * A number that changes with every write of this program but those of {@link #untold}, once it is on disk. Another program's writes are
   * seen in the {@link #stamp} only.
   */
  public long told() {
    return database.told();
  }

  /** Does what writes, all or nothing, for a caller who tells those who must know: {@link #told} stays as it is. */
  public <T> T untold(Supplier<T> work) {
    return database.writeUntold(h -> work.get());
  }

  /**
   * Does the work of a form once, however often and after whatever restart it is sent: the token and the work are kept together. A
   * refused form may be sent again.
   *
   * @param token made with the form, at least 32 characters
   * @param work stores what the form says and answers its number
   * @return the number, or empty if this token's work was done before
   */
  public Optional<Long> once(String token, LongSupplier work) {
    return taken.once(token, work);
  }

  /** Does what reads and writes with nobody else writing in between, all or nothing. */
  public <T> T together(Supplier<T> work) {
    return database.write(h -> work.get());
  }

  /** The number of what a token became, or empty for one that was not taken. */
  public Optional<Long> taken(String token) {
    return taken.numberOf(token);
  }

  /** Tells every field of every table. */
  public int tellEverything(Everything.Listener to) {
    return database.tell(Everything.Which.LEAVING, to);
  }

  /** Looks through what is beside a store whose own server looks after its rows. */
  public DataCheck.Report checkData() {
    return new DataCheck(database.folder(), clock)
        .look(database.counts(), database.read(h -> h.createQuery(DataCheck.FILMS_KEPT).mapTo(String.class).list()));
  }

  /** The folder in which what is sent waits while it arrives, made if it is missing; nothing in it lasts. */
  public Path arriving() {
    return Leftovers.arriving(database.folder());
  }

  /** Backups, by themselves and by hand. */
  public BackupDesk backups() {
    return backups;
  }

  /** Tells which day it is. */
  public Clock clock() {
    return clock;
  }

  /** Whether the squad in here is the invented one of the demo; screens and papers say so. */
  public boolean invented() {
    return settings.invented();
  }

  /** Says for good that the squad in here is invented. */
  public void markInvented() {
    settings.markInvented();
  }

  /** The database, for the packages inside the store. */
  public Database transactions() {
    return database;
  }

  /** The store that is open. */
  Database database() {
    return database;
  }

  @Override
  public void close() {
    if (!seen.equals(Seen.ALL)) {
      return;
    }
    try {
      clipQueue.close();
    } finally {
      database.close();
    }
  }
}
