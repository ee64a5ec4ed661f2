package house

import (
	"fmt"
	"strconv"
	"strings"
)

// sub returns a table under a key, written in braces or under a header.
func (s *section) sub(key string) *section {
	e := s.get(key)
	if e == nil {
		return nil
	}
	if e.value.table == nil {
		msg := fmt.Sprintf("%s; write a table, %s = { … }", e.value.is(), key)
		if e.value.kind == headedList {
			msg = fmt.Sprintf("a list of tables; write one table, [%s]", key)
		}
		s.fail(key, "%s", msg)
		return nil
	}
	return &section{d: s.d, t: e.value.table, where: s.path(key) + "."}
}

// named returns the tables [key.NAME] in the order of the file.
func (s *section) named(key string) []*entry {
	e := s.get(key)
	if e == nil {
		return nil
	}
	if e.value.table == nil {
		s.d.fail(e.at, "", "write a header with a name, [%s.NAME], and the keys under it", key)
		return nil
	}
	var out []*entry
	for i, sub := range e.value.table.entries {
		if i == maxNamed {
			s.d.fail(sub.at, key, "more than %d; no %s has so many", maxNamed, s.d.what)
			break
		}
		switch {
		case sub.value.kind == broken:
		case sub.value.table == nil && sub.value.kind != headedList:
			s.d.fail(sub.at, key, "%s = %s stands here without a name of its own; write a header, [%s.NAME], and the keys under it", sub.key, sub.value.short(), key)
		case sub.value.table == nil:
			s.d.fail(sub.at, key, "write [%s], with single brackets", join([]name{{key, 0}, {sub.key, 0}}))
		case strings.TrimSpace(sub.key) == "":
			s.d.fail(sub.at, key, "an empty name")
		case strings.ContainsFunc(sub.key, controls):
			s.d.fail(sub.at, key, "a control character in the name %q; write plain text", sub.key)
		default:
			out = append(out, sub)
		}
	}
	return out
}

// short is the source of a value if that is short.
func (n *node) short() string {
	if n.raw == "" || len(n.raw) > 30 {
		return "…"
	}
	return n.raw
}

// tables returns the tables of a list: [[key]] headers, or a list of tables in
// braces.
func (s *section) tables(key string) []*table {
	e := s.get(key)
	if e == nil {
		return nil
	}
	if e.value.kind != array && e.value.kind != headedList {
		form := fmt.Sprintf("[[%s]] in double brackets, once for each", key)
		if s.where != "" {
			form = fmt.Sprintf("a list of tables, %s = [ { … }, { … } ]", key)
		}
		s.d.fail(e.at, s.where, "%s is %s; write %s", key, e.value.is(), form)
		return nil
	}
	var out []*table
	for i, item := range e.value.items {
		if i == maxItems {
			s.d.fail(item.at, s.path(key), "more than %d; no %s has so many", maxItems, s.d.what)
			break
		}
		switch {
		case item.kind == broken:
		case item.table == nil:
			s.d.fail(item.at, s.path(key), "%s; write a table in braces, { … }", item.is())
		default:
			out = append(out, item.table)
		}
	}
	return out
}

func list(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

func orList(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

// either lists texts to choose from.
func either(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = strconv.Quote(w)
	}
	return orList(quoted)
}
