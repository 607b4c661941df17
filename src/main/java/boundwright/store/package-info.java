/**
 * What is kept on disk: the schema, one repository for each part that asked for one, reps as CSV and backups. The only room that
 * knows SQL. It answers: is it on disk, and if not, why not, in words a coach can act on?
 */
@NullMarked
package boundwright.store;

import org.jspecify.annotations.NullMarked;

