/** What happens to the packaged service, and to those who ask it, when things fail. */
package dev.slowpoint.failure;
