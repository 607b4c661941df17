/**
 * The screens: pages on the coach's own machine, phone first. This room answers: what does the coach see, and what did
 * they tap? It does no arithmetic of the job; it reads forms, asks the rooms below, and writes pages. HTTP is known
 * here and nowhere else.
 */
@NullMarked
package boundwright.web;

import org.jspecify.annotations.NullMarked;

