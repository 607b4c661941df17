package boundwright.store.account;

import boundwright.account.AccountRepository.Link;
import boundwright.account.Session;
import boundwright.store.engine.Database;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Who is logged in with which browser, and the links that let somebody in once. */
final class Sessions {
  private static final String SESSION =
      "SELECT s.id AS session_id, s.club_id, s.sealed, s.browser, s.since AS begun, s.last_seen,"
          + " a.id, a.login, a.name, a.active, a.password IS NOT NULL AS has_password, a.since"
          + " FROM account_session s JOIN account a ON a.id = s.account_id ";

  private final Database store;

  Sessions(Database store) {
    this.store = store;
  }

  void offer(String codeHash, long account, boolean anew, Instant made, Instant until) {
    store.write(
        h -> {
          h.createUpdate("DELETE FROM account_link WHERE account_id = :account OR until <= :now").bind("account", account).bind("now", made.getEpochSecond()).execute();
          return h.createUpdate("INSERT INTO account_link (code, account_id, anew, made, until) VALUES (:code, :account, :anew, :made, :until)")
              .bind("code", codeHash)
              .bind("account", account)
              .bind("anew", anew ? 1 : 0)
              .bind("made", made.getEpochSecond())
              .bind("until", until.getEpochSecond())
              .execute();
        });
  }

  Optional<Link> take(String codeHash, Instant now) {
    return store.write(
        h ->
            link(h, codeHash, now)
                .map(
                    l -> {
                      h.createUpdate("DELETE FROM account_link WHERE code = :code").bind("code", codeHash).execute();
                      if (l.anew()) {
                        forgetAll(h, l.accountId());
                        h.createUpdate("UPDATE account SET password = NULL WHERE id = :id").bind("id", l.accountId()).execute();
                      }
                      return l;
                    }));
  }

  Optional<Link> offered(String codeHash, Instant now) {
    return store.read(h -> link(h, codeHash, now));
  }

  private static Optional<Link> link(Handle h, String codeHash, Instant now) {
    return h.createQuery("SELECT account_id, anew FROM account_link WHERE code = :code AND made <= :now AND until > :now")
        .bind("code", codeHash)
        .bind("now", now.getEpochSecond())
        .map((r, c) -> new Link(r.getLong("account_id"), r.getInt("anew") == 1))
        .findOne();
  }

  void begin(String secretHash, long account, long club, boolean sealed, String browser, Instant now) {
    store.write(
        h ->
            h.createUpdate(
                    "INSERT INTO account_session (secret, account_id, club_id, sealed, browser, since, last_seen)"
                        + " VALUES (:secret, :account, :club, :sealed, :browser, :now, :now)")
                .bind("secret", secretHash)
                .bind("account", account)
                .bind("club", club)
                .bind("sealed", sealed ? 1 : 0)
                .bind("browser", browser)
                .bind("now", now.getEpochSecond())
                .execute());
  }

  Optional<Session> bySecret(String secretHash) {
    return store.read(h -> h.createQuery(SESSION + "WHERE s.secret = :secret").bind("secret", secretHash).map((r, c) -> session(r)).findOne());
  }

  Optional<Session> byNumber(long number) {
    return store.read(h -> h.createQuery(SESSION + "WHERE s.id = :id").bind("id", number).map((r, c) -> session(r)).findOne());
  }

  List<Session> of(long account) {
    return store.read(h -> h.createQuery(SESSION + "WHERE s.account_id = :account ORDER BY s.id DESC").bind("account", account).map((r, c) -> session(r)).list());
  }

  private static Session session(ResultSet r) throws SQLException {
    return new Session(
        r.getLong("session_id"), SqlAccounts.account(r), r.getLong("club_id"), r.getInt("sealed") == 1, r.getString("browser"),
        Instant.ofEpochSecond(r.getLong("begun")), Instant.ofEpochSecond(r.getLong("last_seen")));
  }

  void seen(long session, Instant now) {
    store.write(h -> h.createUpdate("UPDATE account_session SET last_seen = :now WHERE id = :id").bind("now", now.getEpochSecond()).bind("id", session).execute());
  }

  void look(long session, long club) {
    store.write(h -> h.createUpdate("UPDATE account_session SET club_id = :club WHERE id = :id").bind("club", club).bind("id", session).execute());
  }

  boolean end(long account, long session) {
    return store.write(
            h -> h.createUpdate("DELETE FROM account_session WHERE id = :id AND account_id = :account").bind("id", session).bind("account", account).execute())
        > 0;
  }

  void endOld(Instant lastSeenBefore, Instant begunBefore) {
    store.write(
        h ->
            h.createUpdate("DELETE FROM account_session WHERE last_seen < :seen OR since < :begun")
                .bind("seen", lastSeenBefore.getEpochSecond())
                .bind("begun", begunBefore.getEpochSecond())
                .execute());
  }

  void endOthers(Handle h, long account, long except) {
    h.createUpdate("DELETE FROM account_session WHERE account_id = :account AND id <> :except").bind("account", account).bind("except", except).execute();
  }

  void endIn(Handle h, long account, long club) {
    h.createUpdate("DELETE FROM account_session WHERE account_id = :account AND club_id = :club").bind("account", account).bind("club", club).execute();
    h.createUpdate("DELETE FROM phone WHERE account_id = :account AND club_id = :club").bind("account", account).bind("club", club).execute();
  }

  /** Ends whatever lets this account in but its password. */
  void forgetAll(Handle h, long account) {
    endOthers(h, account, 0);
    for (String table : new String[] {"account_link", "passkey", "department_bond", "phone", "phone_code"}) {
      h.createUpdate("DELETE FROM " + table + " WHERE account_id = :account").bind("account", account).execute();
    }
  }
}
