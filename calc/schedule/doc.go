// Package schedule puts what is left to do on a calendar: one pair of hands, every
// day like today, each coat within the hours that suit its material, and once the
// layer below allows it.
package schedule
