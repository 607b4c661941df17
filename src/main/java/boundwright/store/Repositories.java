package boundwright.store;

import boundwright.account.AccountRepository;
import boundwright.account.BondRepository;
import boundwright.account.PasskeyRepository;
import boundwright.approach.aim.BoardLog;
import boundwright.approach.full.FullRunLog;
import boundwright.approach.run.RunThroughLog;
import boundwright.approach.weather.WeatherLog;
import boundwright.athlete.AthleteRepository;
import boundwright.athlete.Changes;
import boundwright.athlete.growth.GrowthDesk;
import boundwright.flight.RepStore;
import boundwright.jump.JumpLog;
import boundwright.jump.takeoff.LongJumpLog;
import boundwright.load.CareRepository;
import boundwright.load.LoadRepository;
import boundwright.load.WorkLog;
import boundwright.load.back.WayBackRepository;
import boundwright.meet.MeetRepository;
import boundwright.meet.day.MeetDayLog;
import boundwright.pairing.PhoneRepository;
import boundwright.readiness.LadderRepository;
import boundwright.readiness.TestRepository;
import boundwright.runway.Rungs;
import boundwright.runway.SettingsRepository;
import boundwright.season.SeasonRepository;
import boundwright.season.ladder.StayRepository;
import boundwright.season.order.OrderRepository;
import boundwright.store.account.SqlAccounts;
import boundwright.store.account.SqlBonds;
import boundwright.store.account.SqlPasskeys;
import boundwright.store.engine.Database;
import boundwright.store.people.SqlGrowth;
import boundwright.store.people.SqlPeople;
import boundwright.store.view.Seen;
import boundwright.store.view.SeenAthletes;
import boundwright.store.view.SeenCare;
import boundwright.store.view.SeenWaysBack;
import boundwright.takeoffs.RunJumpLog;
import boundwright.technique.LookRepository;
import java.time.Clock;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/** What is kept, by what it is about, and the transactions in which it is written: the half of an open store that answers nothing by itself. */
abstract class Repositories {
  final Database database;
  final Clock clock;
  final AthleteRepository athletes;
  final SqlReps reps;
  final SqlSettings settings;
  /** With everybody's heights, whoever looks. */
  final GrowthDesk growing;
  /** With everybody's body, whoever looks. */
  final SqlCare bodies;
  final SqlLoad load;
  final SqlLadder ladder;
  final SqlJumpLog jumpLog;
  final SqlLongJumps longJumps;
  final SqlRunJumps runJumps;
  final SqlLooks looks;
  final SqlRunThroughs runThroughs;
  final SqlBoardLog boardLog;
  final SqlFullRun fullRunLog;
  final SqlWeather weather;
  final SqlMeetDays meetDays;
  final SqlMeets meets;
  final WorkLog workLog;
  final SqlOrder order;
  final Changes changes;
  private final CareRepository care;
  final WayBackRepository waysBack;
  private final SqlStays stays;
  private final SqlTests tests;
  private final SqlPhones phones;
  private final SqlAccounts accounts;
  private final SqlSeasons seasons;
  private final SqlTaken taken;

  Repositories(Database database, Clock clock, Seen seen) {
    this.database = database;
    this.clock = clock;
    this.changes = new SqlChanges(database);
    Long only = seen.only();
    SqlAthletes everybody = new SqlAthletes(database);
    this.athletes = only == null ? everybody : new SeenAthletes(everybody, only);
    this.reps = new SqlReps(database);
    this.settings = new SqlSettings(database, clock);
    SqlPeople people = new SqlPeople(database);
    this.growing = new GrowthDesk(new SqlGrowth(database), people, clock);
    this.bodies = new SqlCare(database, growing, people);
    this.care = seen.bodies() ? bodies : new SeenCare(bodies);
    this.waysBack = seen.bodies() ? new SqlWaysBack(database) : new SeenWaysBack();
    this.accounts = new SqlAccounts(database);
    this.ladder = new SqlLadder(database);
    this.stays = new SqlStays(database);
    this.looks = new SqlLooks(database);
    this.tests = new SqlTests(database);
    this.jumpLog = new SqlJumpLog(database);
    this.longJumps = new SqlLongJumps(database);
    this.runJumps = new SqlRunJumps(database);
    this.runThroughs = new SqlRunThroughs(database);
    this.meets = new SqlMeets(database);
    this.phones = new SqlPhones(database);
    this.seasons = new SqlSeasons(database);
    this.boardLog = new SqlBoardLog(database, meets);
    this.fullRunLog = new SqlFullRun(database);
    this.weather = new SqlWeather(database);
    this.meetDays = new SqlMeetDays(database);
    this.load = new SqlLoad(database);
    this.workLog = new SqlWorkLog(database);
    this.order = new SqlOrder(database);
    this.taken = new SqlTaken(database);
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

  /** Ways back of single legs. */
  public WayBackRepository waysBack() {
    return waysBack;
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

  /** Distances by approach steps. */
  public FullRunLog fullRunLog() {
    return fullRunLog;
  }

  /** The weather of days. */
  public WeatherLog weather() {
    return weather;
  }

  /** The days of meets. */
  public MeetDayLog meetDays() {
    return meetDays;
  }

  /** Measured long jumps. */
  public LongJumpLog longJumps() {
    return longJumps;
  }

  /** Repeated take-offs. */
  public RunJumpLog runJumps() {
    return runJumps;
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

  /** What the legs did, day by day. */
  public WorkLog workLog() {
    return workLog;
  }

  /** The settings of a session's order and the order of the day. */
  public OrderRepository order() {
    return order;
  }

  /** Says whose data changed, by this program or another. */
  public Changes changes() {
    return changes;
  }

  /** Changes whenever anything is written here, by this program or another, so that what was read need not be read again. */
  public String stamp() {
    return database.stamp();
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

  /** Tells which day it is. */
  public Clock clock() {
    return clock;
  }
}
