package boundwright.store.account;

import boundwright.account.Account;
import boundwright.account.AccountRepository;
import boundwright.account.Club;
import boundwright.account.Membership;
import boundwright.account.Noted;
import boundwright.account.Role;
import boundwright.account.Session;
import boundwright.quantity.RefusedException;
import boundwright.store.engine.Database;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongFunction;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Accounts in the first club's store. */
public final class SqlAccounts implements AccountRepository {
  private static final String ACCOUNT = "SELECT id, login, name, active, password IS NOT NULL AS has_password, since FROM account ";
  private static final String MEMBER = "SELECT account_id, club_id, role, athlete_id FROM membership ";

  private final Database store;
  private final Sessions sessions;

  /** In this store. */
  public SqlAccounts(Database store) {
    this.store = store;
    this.sessions = new Sessions(store);
  }

  @Override
  public List<Club> clubs() {
    return store.read(h -> h.createQuery("SELECT id, name FROM club ORDER BY id").map((r, c) -> new Club(r.getLong("id"), r.getString("name"))).list());
  }

  @Override
  public Club addClub(String name, Instant now) {
    return store.write(
        h -> {
          freeName(h, name, 0);
          long id =
              h.createUpdate("INSERT INTO club (name, name_key, since) VALUES (:name, :key, :now)")
                  .bind("name", name)
                  .bind("key", key(name))
                  .bind("now", now.getEpochSecond())
                  .executeAndReturnGeneratedKeys("id")
                  .mapTo(Long.class)
                  .one();
          return new Club(id, name);
        });
  }

  @Override
  public boolean renameClub(long club, String name) {
    return store.write(
            h -> {
              freeName(h, name, club);
              return h.createUpdate("UPDATE club SET name = :name, name_key = :key WHERE id = :id")
                  .bind("name", name)
                  .bind("key", key(name))
                  .bind("id", club)
                  .execute();
            })
        > 0;
  }

  private static void freeName(Handle h, String name, long except) {
    h.createQuery("SELECT name FROM club WHERE name_key = :key AND id <> :id")
        .bind("key", key(name))
        .bind("id", except)
        .mapTo(String.class)
        .findOne()
        .ifPresent(
            taken -> {
              throw new RefusedException("There is a club '" + taken + "' already. Choose another name. Nothing was kept.");
            });
  }

  private static String key(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }

  @Override
  public List<Account> all() {
    return store.read(h -> h.createQuery(ACCOUNT + "ORDER BY login").map((r, c) -> account(r)).list());
  }

  @Override
  public Optional<Account> byId(long id) {
    return store.read(h -> h.createQuery(ACCOUNT + "WHERE id = :id").bind("id", id).map((r, c) -> account(r)).findOne());
  }

  @Override
  public Optional<Account> byLogin(String login) {
    return store.read(h -> h.createQuery(ACCOUNT + "WHERE login = :login").bind("login", login).map((r, c) -> account(r)).findOne());
  }

  static Account account(ResultSet r) throws SQLException {
    return new Account(
        r.getLong("id"), r.getString("login"), r.getString("name"), r.getInt("active") == 1, r.getBoolean("has_password"),
        Instant.ofEpochSecond(r.getLong("since")));
  }

  @Override
  public Account add(String login, String name, LongFunction<Membership> place, Instant now) {
    return store.write(
        h -> {
          if (h.createQuery("SELECT id FROM account WHERE login = :login").bind("login", login).mapTo(Long.class).findOne().isPresent()) {
            throw new RefusedException("The login '" + login + "' is taken. Choose another. Nothing was kept.");
          }
          long id =
              h.createUpdate("INSERT INTO account (login, name, active, since) VALUES (:login, :name, 1, :now)")
                  .bind("login", login)
                  .bind("name", name)
                  .bind("now", now.getEpochSecond())
                  .executeAndReturnGeneratedKeys("id")
                  .mapTo(Long.class)
                  .one();
          setMembership(place.apply(id));
          return new Account(id, login, name, true, false, Instant.ofEpochSecond(now.getEpochSecond()));
        });
  }

  @Override
  public void setActive(long account, boolean active) {
    store.write(
        h -> {
          if (!active) {
            sessions.forgetAll(h, account);
          }
          return h.createUpdate("UPDATE account SET active = :active WHERE id = :id").bind("active", active ? 1 : 0).bind("id", account).execute();
        });
  }

  @Override
  public Optional<String> password(long account) {
    return store.read(
        h -> h.createQuery("SELECT password FROM account WHERE id = :id AND password IS NOT NULL").bind("id", account).mapTo(String.class).findOne());
  }

  @Override
  public void setPassword(long account, @Nullable String hash, long exceptSession) {
    store.write(
        h -> {
          sessions.endOthers(h, account, exceptSession);
          return h.createUpdate("UPDATE account SET password = :hash WHERE id = :id").bind("hash", hash).bind("id", account).execute();
        });
  }

  @Override
  public List<Membership> memberships(long account) {
    return store.read(h -> h.createQuery(MEMBER + "WHERE account_id = :account ORDER BY club_id").bind("account", account).map((r, c) -> membership(r)).list());
  }

  @Override
  public List<Membership> members(long club) {
    return store.read(h -> h.createQuery(MEMBER + "WHERE club_id = :club ORDER BY account_id").bind("club", club).map((r, c) -> membership(r)).list());
  }

  private static Membership membership(ResultSet r) throws SQLException {
    long athlete = r.getLong("athlete_id");
    return new Membership(
        r.getLong("account_id"), r.getLong("club_id"), Role.valueOf(r.getString("role")), Role.valueOf(r.getString("role")) == Role.ATHLETE ? (Long) athlete : null);
  }

  @Override
  public void setMembership(Membership m) {
    store.write(
        h ->
            h.createUpdate(
                    "INSERT INTO membership (account_id, club_id, role, athlete_id) VALUES (:account, :club, :role, :athlete)"
                        + " ON CONFLICT (account_id, club_id) DO UPDATE SET role = excluded.role, athlete_id = excluded.athlete_id")
                .bind("account", m.accountId())
                .bind("club", m.clubId())
                .bind("role", m.role().name())
                .bind("athlete", m.athleteId())
                .execute());
  }

  @Override
  public boolean leave(long account, long club) {
    return store.write(
            h -> {
              sessions.endIn(h, account, club);
              return h.createUpdate("DELETE FROM membership WHERE account_id = :account AND club_id = :club").bind("account", account).bind("club", club).execute();
            })
        > 0;
  }

  @Override
  public void forgetAthlete(long club, long athlete) {
    store.write(
        h -> {
          List<Long> theirs =
              h.createQuery("SELECT account_id FROM membership WHERE club_id = :club AND athlete_id = :athlete")
                  .bind("club", club)
                  .bind("athlete", athlete)
                  .mapTo(Long.class)
                  .list();
          theirs.forEach(
              account -> {
                leave(account, club);
                if (memberships(account).isEmpty()) {
                  h.createUpdate("DELETE FROM account WHERE id = :id").bind("id", account).execute();
                }
              });
          return theirs.size();
        });
  }

  @Override
  public void offer(String codeHash, long account, boolean anew, Instant made, Instant until) {
    sessions.offer(codeHash, account, anew, made, until);
  }

  @Override
  public Optional<Link> take(String codeHash, Instant now) {
    return sessions.take(codeHash, now);
  }

  @Override
  public Optional<Link> offered(String codeHash, Instant now) {
    return sessions.offered(codeHash, now);
  }

  @Override
  public void begin(String secretHash, long account, long club, boolean sealed, String browser, Instant now) {
    sessions.begin(secretHash, account, club, sealed, browser, now);
  }

  @Override
  public Optional<Session> bySecret(String secretHash) {
    return sessions.bySecret(secretHash);
  }

  @Override
  public Optional<Session> session(long number) {
    return sessions.byNumber(number);
  }

  @Override
  public List<Session> sessions(long account) {
    return sessions.of(account);
  }

  @Override
  public void seen(long session, Instant now) {
    sessions.seen(session, now);
  }

  @Override
  public void look(long session, long club) {
    sessions.look(session, club);
  }

  @Override
  public boolean end(long account, long session) {
    return sessions.end(account, session);
  }

  @Override
  public void endOld(Instant lastSeenBefore, Instant begunBefore) {
    sessions.endOld(lastSeenBefore, begunBefore);
  }

  @Override
  public void wrong(List<String> by, Instant now, Instant from) {
    store.write(
        h -> {
          h.createUpdate("DELETE FROM wrong_try WHERE at < :from").bind("from", from.getEpochSecond()).execute();
          by.forEach(b -> h.createUpdate("INSERT INTO wrong_try (tried_by, at) VALUES (:by, :now)").bind("by", b).bind("now", now.getEpochSecond()).execute());
          return by.size();
        });
  }

  @Override
  public int wrongSince(String by, Instant after, Instant now) {
    return store.read(
        h ->
            h.createQuery("SELECT count(*) FROM wrong_try WHERE tried_by = :by AND at > :after AND at <= :now")
                .bind("by", by)
                .bind("after", after.getEpochSecond())
                .bind("now", now.getEpochSecond())
                .mapTo(Integer.class)
                .one());
  }

  @Override
  public void forgive(String by) {
    store.write(h -> h.createUpdate("DELETE FROM wrong_try WHERE tried_by = :by").bind("by", by).execute());
  }

  @Override
  public void note(Noted line) {
    store.write(
        h ->
            h.createUpdate("INSERT INTO noted (at, club_id, account_id, who, what, about) VALUES (:at, :club, :account, :who, :what, :about)")
                .bind("at", line.at().getEpochSecond())
                .bind("club", line.clubId())
                .bind("account", line.accountId())
                .bind("who", line.who())
                .bind("what", line.what())
                .bind("about", line.about())
                .execute());
  }

  @Override
  public List<Noted> notes(long club, int most) {
    return store.read(
        h ->
            h.createQuery("SELECT at, club_id, account_id, who, what, about FROM noted WHERE club_id = :club ORDER BY id DESC LIMIT :most")
                .bind("club", club)
                .bind("most", most)
                .map(
                    (r, c) -> {
                      long account = r.getLong("account_id");
                      return new Noted(
                          Instant.ofEpochSecond(r.getLong("at")), r.getLong("club_id"), r.wasNull() ? null : (Long) account, r.getString("who"),
                          r.getString("what"), r.getString("about"));
                    })
                .list());
  }
}
