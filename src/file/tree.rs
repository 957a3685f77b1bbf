//! A draft as a tree of groups, between the document types and the written text.

use serde::ser::{self, Serialize};

/// A part of the written form.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Node {
    /// Written as it is: a word, a number.
    Plain(String),
    /// A text, without its quotes.
    Text(String),
    /// `[a, b]`
    List(Vec<Node>),
    /// `word(a, b)`, or a pair without a word.
    Pair(&'static str, Vec<Node>),
    /// `word(name: a, other: b)`, or a group without a word.
    Group(&'static str, Vec<(&'static str, Node)>),
}

impl Node {
    /// Whether a field that holds it is left out.
    fn is_empty(&self) -> bool {
        match self {
            Self::Plain(plain) => plain == "0" || plain == "false",
            Self::Text(text) => text.is_empty(),
            Self::List(members) => members.is_empty(),
            Self::Pair(..) => false,
            Self::Group(word, fields) => word.is_empty() && fields.is_empty(),
        }
    }
}

/// The document types hold something that the file has no form for (a decimal number, a map …).
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub(super) struct NoForm(String);

impl ser::Error for NoForm {
    fn custom<T: std::fmt::Display>(message: T) -> Self {
        Self(message.to_string())
    }
}

/// The tree of a value.
pub(super) fn tree<T: Serialize + ?Sized>(value: &T) -> Result<Node, NoForm> {
    value.serialize(Planter)
}

struct Planter;

/// Gathers members of a list or pair.
struct Members {
    word: Option<&'static str>,
    members: Vec<Node>,
}

/// Gathers the fields of a group.
struct Fields {
    word: &'static str,
    fields: Vec<(&'static str, Node)>,
    /// Fields of a plain group that are empty are left out; those of a variant have no default.
    leave_out: bool,
}

type Answer = Result<Node, NoForm>;

fn no_form(what: &str) -> Answer {
    Err(NoForm(format!("a draft file has no {what}")))
}

/// Kinds of which the format has none.
macro_rules! no_forms {
    ($($method:ident($kind:ty) $what:literal;)*) => {
        $(fn $method(self, _: $kind) -> Answer { no_form($what) })*
    };
}

/// Whole numbers.
macro_rules! whole {
    ($($method:ident($kind:ty);)*) => {
        $(fn $method(self, number: $kind) -> Answer { Ok(Node::Plain(number.to_string())) })*
    };
}

impl ser::Serializer for Planter {
    type Ok = Node;
    type Error = NoForm;
    type SerializeSeq = Members;
    type SerializeTuple = Members;
    type SerializeTupleStruct = Members;
    type SerializeTupleVariant = Members;
    type SerializeMap = ser::Impossible<Node, NoForm>;
    type SerializeStruct = Fields;
    type SerializeStructVariant = Fields;

    whole! {
        serialize_u8(u8); serialize_u16(u16); serialize_u32(u32); serialize_u64(u64);
    }
    no_forms! {
        serialize_i8(i8) "signed numbers"; serialize_i16(i16) "signed numbers"; serialize_i32(i32) "signed numbers";
        serialize_i64(i64) "signed numbers"; serialize_f32(f32) "decimal numbers"; serialize_f64(f64) "decimal numbers";
        serialize_char(char) "single letters"; serialize_bytes(&[u8]) "bytes";
        serialize_unit_struct(&'static str) "units";
    }

    fn serialize_bool(self, yes: bool) -> Answer {
        Ok(Node::Plain(yes.to_string()))
    }

    fn serialize_str(self, text: &str) -> Answer {
        Ok(Node::Text(text.to_owned()))
    }

    fn serialize_none(self) -> Answer {
        no_form("absent values")
    }

    fn serialize_some<T: Serialize + ?Sized>(self, _: &T) -> Answer {
        no_form("absent values")
    }

    fn serialize_unit(self) -> Answer {
        no_form("units")
    }

    fn serialize_unit_variant(self, _: &'static str, _: u32, word: &'static str) -> Answer {
        Ok(Node::Plain(word.to_owned()))
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(self, _: &'static str, value: &T) -> Answer {
        Ok(Node::Pair("", vec![tree(value)?]))
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _: &'static str,
        _: u32,
        word: &'static str,
        value: &T,
    ) -> Answer {
        // A group alone in brackets goes without a pair of its own.
        Ok(match tree(value)? {
            Node::Group("", fields) => Node::Group(word, fields),
            other => Node::Pair(word, vec![other]),
        })
    }

    fn serialize_seq(self, _: Option<usize>) -> Result<Members, NoForm> {
        Ok(Members { word: None, members: Vec::new() })
    }

    fn serialize_tuple(self, _: usize) -> Result<Members, NoForm> {
        Ok(Members { word: Some(""), members: Vec::new() })
    }

    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Members, NoForm> {
        Ok(Members { word: Some(""), members: Vec::new() })
    }

    fn serialize_tuple_variant(self, _: &'static str, _: u32, word: &'static str, _: usize) -> Result<Members, NoForm> {
        Ok(Members { word: Some(word), members: Vec::new() })
    }

    fn serialize_map(self, _: Option<usize>) -> Result<Self::SerializeMap, NoForm> {
        Err(NoForm("a draft file has no maps".into()))
    }

    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Fields, NoForm> {
        Ok(Fields { word: "", fields: Vec::new(), leave_out: true })
    }

    fn serialize_struct_variant(self, _: &'static str, _: u32, word: &'static str, _: usize) -> Result<Fields, NoForm> {
        Ok(Fields { word, fields: Vec::new(), leave_out: false })
    }
}

impl Members {
    fn add<T: Serialize + ?Sized>(&mut self, member: &T) -> Result<(), NoForm> {
        self.members.push(tree(member)?);
        Ok(())
    }

    fn end(self) -> Answer {
        Ok(match self.word {
            Some(word) => Node::Pair(word, self.members),
            None => Node::List(self.members),
        })
    }
}

impl Fields {
    fn add<T: Serialize + ?Sized>(&mut self, name: &'static str, value: &T) -> Result<(), NoForm> {
        let node = tree(value)?;
        if !(self.leave_out && node.is_empty()) {
            self.fields.push((name, node));
        }
        Ok(())
    }

    fn end(self) -> Answer {
        Ok(Node::Group(self.word, self.fields))
    }
}

/// The traits of serde's gatherers all say the same.
macro_rules! gather {
    ($($kind:ident $method:ident($($name:ident: $of:ty)?) for $gatherer:ident;)*) => {
        $(impl ser::$kind for $gatherer {
            type Ok = Node;
            type Error = NoForm;

            fn $method<T: Serialize + ?Sized>(&mut self, $($name: $of,)? value: &T) -> Result<(), NoForm> {
                self.add($($name,)? value)
            }

            fn end(self) -> Answer {
                $gatherer::end(self)
            }
        })*
    };
}

gather! {
    SerializeSeq serialize_element() for Members;
    SerializeTuple serialize_element() for Members;
    SerializeTupleStruct serialize_field() for Members;
    SerializeTupleVariant serialize_field() for Members;
    SerializeStruct serialize_field(name: &'static str) for Fields;
    SerializeStructVariant serialize_field(name: &'static str) for Fields;
}
