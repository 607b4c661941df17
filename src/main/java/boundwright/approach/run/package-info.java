/**
 * Run-throughs: how long this athlete's steps are, how they spread along the runway, and which start mark and check
 * marks follow.
 */
@NullMarked
package boundwright.approach.run;

import org.jspecify.annotations.NullMarked;

